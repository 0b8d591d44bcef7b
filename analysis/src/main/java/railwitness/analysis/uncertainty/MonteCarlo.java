package railwitness.analysis.uncertainty;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/**
 * Propagation of distributions (JCGM 101, GUM Supplement 1): the cross-check where a model is bent.
 *
 * <p>Each influence is drawn from its own shape: STUDENT as a scaled t of its degrees of freedom (6.4.9), the
 * members of one ensemble with one common scatter, all others as they are. The same seed gives the same answer.
 */
public final class MonteCarlo {
    private final long seed;
    private final int trials;

    /** @param trials 1000 or more; JCGM 101 advises 200 000 for a 95 % interval */
    public MonteCarlo(long seed, int trials) {
        this.seed = seed;
        this.trials = Arguments.unlessAtLeast("number of Monte Carlo trials", trials, 1000);
    }

    /** Draws the inputs and works the model out for each draw; the model gets the inputs in their order. */
    public Outcomes run(List<Estimate> inputs, ToDoubleFunction<double[]> model) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Influence> influences = influences(inputs);
        double[][] coefficients = coefficients(inputs, influences);
        double[] outcomes = new double[trials];
        double[] drawn = new double[influences.size()];
        double[] values = new double[inputs.size()];
        for (int trial = 0; trial < trials; trial++) {
            draw(random, influences, drawn);
            for (int i = 0; i < values.length; i++) {
                values[i] = inputs.get(i).value() + product(coefficients[i], drawn);
            }
            outcomes[trial] = model.applyAsDouble(values);
        }
        return new Outcomes(outcomes);
    }

    private static List<Influence> influences(List<Estimate> inputs) {
        Set<Influence> all = new LinkedHashSet<>();
        inputs.forEach(input -> input.terms().forEach(term -> all.add(term.influence())));
        return new ArrayList<>(all);
    }

    private static double[][] coefficients(List<Estimate> inputs, List<Influence> influences) {
        return inputs.stream()
                .map(input ->
                        influences.stream().mapToDouble(input::coefficient).toArray())
                .toArray(double[][]::new);
    }

    private static double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static void draw(SplittableRandom random, List<Influence> influences, double[] drawn) {
        Map<Object, Double> scatters = new HashMap<>();
        for (int i = 0; i < drawn.length; i++) {
            Influence influence = influences.get(i);
            drawn[i] = standard(random, influence.shape());
            if (influence.shape() == Shape.STUDENT) {
                drawn[i] *= scatters.computeIfAbsent(
                        influence.group(), group -> scatter(random, influence.degreesOfFreedom()));
            }
        }
    }

    /** One draw of standard deviation 1; of a Student influence its normal part. */
    private static double standard(SplittableRandom random, Shape shape) {
        return switch (shape) {
            case NORMAL, STUDENT -> random.nextGaussian();
            case RECTANGULAR -> Math.sqrt(3) * (2 * random.nextDouble() - 1);
            case TRIANGULAR -> Math.sqrt(6) * (random.nextDouble() - random.nextDouble());
            case U_SHAPED -> Math.sqrt(2) * Math.sin(2 * Math.PI * random.nextDouble());
        };
    }

    /** Root of nu over chi-squared: what turns a normal draw into a Student one. */
    private static double scatter(SplittableRandom random, double dof) {
        return dof > 1e6 ? 1 : Math.sqrt(dof / (2 * gamma(random, dof / 2)));
    }

    /** Gamma variate of unit scale: Marsaglia and Tsang, ACM Trans. Math. Software 26 (2000) 363. */
    private static double gamma(SplittableRandom random, double shape) {
        if (shape < 1) {
            return gamma(random, shape + 1) * Math.pow(1 - random.nextDouble(), 1 / shape);
        }
        double d = shape - 1.0 / 3;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double x = random.nextGaussian();
            double v = Math.pow(1 + c * x, 3);
            if (v > 0 && Math.log(1 - random.nextDouble()) < x * x / 2 + d - d * v + d * Math.log(v)) {
                return d * v;
            }
        }
    }
}
