package railwitness.analysis.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A value and what is not known about it: a linear combination of named independent influences.
 *
 * <p>Propagation is the law of GUM 5.2 to first order. Correlation needs no table: two estimates are correlated
 * through the influences they share (GUM F.1.2.3). Unit: whatever the value has; the caller keeps it. Immutable.
 */
public final class Estimate {
    private final double value;
    private final Map<Influence, Double> coefficients;
    private final boolean known;

    private Estimate(double value, Map<Influence, Double> coefficients, boolean known) {
        this.value = Arguments.unlessFinite("value of an estimate", value);
        this.coefficients = Collections.unmodifiableMap(coefficients);
        this.known = known;
    }

    /** A number without uncertainty: a count, a definition. */
    public static Estimate exact(double value) {
        return new Estimate(value, Map.of(), true);
    }

    /** A value with its terms; the same influence named twice adds up. */
    public static Estimate of(double value, Term... terms) {
        return of(value, List.of(terms));
    }

    /** A value with its terms; the same influence named twice adds up. */
    public static Estimate of(double value, List<Term> terms) {
        Map<Influence, Double> sum = new LinkedHashMap<>();
        terms.forEach(term -> sum.merge(term.influence(), term.coefficient(), Double::sum));
        return new Estimate(value, sum, true);
    }

    /**
     * Means of simultaneous readings, correlated as the readings were (GUM 5.2.3 and H.2).
     *
     * @param name printed in budgets, such as 'scatter of readings'
     * @param series one array per quantity, all of the same length, 2 or more
     */
    public static List<Estimate> fromSimultaneous(String name, List<double[]> series) {
        return Simultaneous.means(name, series);
    }

    /** As {@link #fromSimultaneous(String, List)}, named 'scatter of readings'. */
    public static List<Estimate> fromSimultaneous(List<double[]> series) {
        return fromSimultaneous("scatter of readings", series);
    }

    /**
     * Values found together with a known covariance, which may be singular: one cause named once in budgets.
     *
     * @param covariance of the values, symmetric, as many rows and columns as values
     * @param degreesOfFreedom of that covariance, above 0
     */
    public static List<Estimate> fromCovariance(
            String name, double[] values, double[][] covariance, double degreesOfFreedom) {
        return Simultaneous.correlated(name, values, covariance, degreesOfFreedom);
    }

    /**
     * A function's value with the uncertainty its inputs give it, to first order (GUM 5.1.2, 5.2.2).
     *
     * @param value of the function at the inputs' values
     * @param sensitivities partial derivative of the function by each input, in the order of the inputs
     */
    public static Estimate propagate(double value, List<Estimate> inputs, double... sensitivities) {
        if (inputs.size() != sensitivities.length) {
            throw new IllegalArgumentException(
                    sensitivities.length + " sensitivities for " + inputs.size() + " inputs: must be as many");
        }
        Map<Influence, Double> sum = new LinkedHashMap<>();
        boolean known = true;
        for (int i = 0; i < sensitivities.length; i++) {
            double c = Arguments.unlessFinite("sensitivity " + (i + 1), sensitivities[i]);
            inputs.get(i).coefficients.forEach((influence, part) -> sum.merge(influence, c * part, Double::sum));
            known &= inputs.get(i).known;
        }
        return new Estimate(value, sum, known);
    }

    /** Arithmetic mean; at least one. */
    public static Estimate mean(List<Estimate> inputs) {
        return sum(inputs).scale(1.0 / Arguments.unlessAtLeast("number of estimates to average", inputs.size(), 1));
    }

    /** Sum; zero exactly for none. */
    public static Estimate sum(List<Estimate> inputs) {
        double[] ones = new double[inputs.size()];
        Arrays.fill(ones, 1.0);
        return propagate(inputs.stream().mapToDouble(Estimate::value).sum(), inputs, ones);
    }

    public Estimate plus(Estimate other) {
        return propagate(value + other.value, List.of(this, other), 1, 1);
    }

    public Estimate plus(double number) {
        return propagate(value + number, List.of(this), 1);
    }

    public Estimate minus(Estimate other) {
        return propagate(value - other.value, List.of(this, other), 1, -1);
    }

    public Estimate times(Estimate other) {
        return propagate(value * other.value, List.of(this, other), other.value, value);
    }

    /** The quotient; refused where the divisor's value is 0. */
    public Estimate over(Estimate other) {
        if (other.value == 0) {
            throw new ArithmeticException("division of " + value + " by an estimate of value 0");
        }
        double quotient = value / other.value;
        return propagate(quotient, List.of(this, other), 1 / other.value, -quotient / other.value);
    }

    public Estimate negate() {
        return scale(-1);
    }

    /** The magnitude; an estimate keeps its uncertainty, also at 0. */
    public Estimate abs() {
        return value < 0 ? negate() : this;
    }

    public Estimate scale(double factor) {
        return propagate(value * factor, List.of(this), factor);
    }

    /** This one with another independent or shared influence added. */
    public Estimate with(Term term) {
        Estimate added = plus(of(0, term));
        return new Estimate(value, added.coefficients, known);
    }

    /** The same numbers, marked 'scatter only': the accuracy behind them is not stated. */
    public Estimate scatterOnly() {
        return new Estimate(value, coefficients, false);
    }

    /**
     * Whether the accuracy behind the value is stated. False: {@link #u()} holds only what is known (scatter), the
     * true uncertainty is larger by an unknown amount. Anything worked out from such an estimate is such.
     */
    public boolean known() {
        return known;
    }

    public double value() {
        return value;
    }

    /** Combined standard uncertainty of what is known, 0 or more. */
    public double u() {
        double scale =
                coefficients.values().stream().mapToDouble(Math::abs).max().orElse(0);
        if (scale == 0) {
            return 0;
        }
        double sum = 0;
        for (double part : coefficients.values()) {
            sum += (part / scale) * (part / scale);
        }
        return scale * Math.sqrt(sum);
    }

    /** Signed coefficient of each influence, in the estimate's unit. */
    public List<Term> terms() {
        List<Term> terms = new ArrayList<>();
        coefficients.forEach((influence, part) -> terms.add(new Term(influence, part)));
        return List.copyOf(terms);
    }

    /** Signed coefficient of one influence, in the estimate's unit; 0 where it has no part. */
    public double coefficient(Influence influence) {
        return coefficients.getOrDefault(influence, 0.0);
    }

    /** What each cause brings, largest first; influences of one ensemble are one line. */
    public List<Contribution> contributions() {
        return Contributions.of(terms());
    }

    public double covariance(Estimate other) {
        double sum = 0;
        for (Map.Entry<Influence, Double> entry : coefficients.entrySet()) {
            sum += entry.getValue() * other.coefficient(entry.getKey());
        }
        return sum;
    }

    /** Correlation coefficient, -1 to 1; 0 where either has no uncertainty. */
    public double correlation(Estimate other) {
        double product = u() * other.u();
        return product == 0 ? 0 : Math.max(-1, Math.min(1, covariance(other) / product));
    }

    /** Welch-Satterthwaite (GUM G.4.1), correlated terms taken by influence; infinite where none is finite. */
    public double effectiveDegreesOfFreedom() {
        return Contributions.effectiveDegreesOfFreedom(contributions());
    }

    /** Expanded uncertainty for a coverage probability between 0 and 1; see {@link Coverage#how()}. */
    public Coverage coverage(double probability) {
        return CoverageFactor.of(contributions(), Arguments.unlessFraction("coverage probability", probability));
    }

    /** Probability that the true value is at most the given number, by the distribution coverage goes by. */
    public double probabilityAtMost(double number) {
        return CoverageFactor.below(contributions(), number - value);
    }

    @Override
    public String toString() {
        return value + " (u = " + u() + (known ? ")" : ", scatter only)");
    }
}
