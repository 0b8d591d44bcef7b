package railwitness.analysis.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.hipparchus.linear.MatrixUtils;

/**
 * Unweighted linear least squares, y = X beta, over points that carry their own uncertainty.
 *
 * <p>Solved by QR of the column-scaled design. What the points share (a meter's gain, say) stays in the parameters
 * as their shared influence, from y and from X. The scatter about the fit is a Type A term of n - p degrees of
 * freedom, counted only as far as it exceeds what the points' own influences let expect, so nothing counts twice.
 */
public final class LeastSquares {
    private final double[][] x;
    private final double[] beta;
    private final double[] residuals;
    private final double[][] pseudoInverse;
    private final double[][] unscaledCovariance;
    private final double conditionNumber;
    private final List<Estimate> parameters;
    private final double excessVariance;

    /**
     * @param name of the fit, for budgets: 'scatter about the ' + name
     * @param design one row per point, one column per parameter, at least as many rows as columns
     * @param observations one y per row
     * @throws IllegalArgumentException where the rows do not fit together or cannot tell the parameters apart
     */
    public LeastSquares(String name, List<List<Estimate>> design, List<Estimate> observations) {
        x = values(design, observations.size());
        double[] y = observations.stream().mapToDouble(Estimate::value).toArray();
        DesignMatrix solution = new DesignMatrix(x);
        conditionNumber = solution.conditionNumber();
        pseudoInverse = solution.pseudoInverse();
        unscaledCovariance = solution.unscaledCovariance();
        beta = solution.solve(y);
        residuals = DesignMatrix.residuals(x, beta, y);
        List<Estimate> effective = effective(design, observations);
        excessVariance = Math.max(0, observedVariance() - expectedVariance(effective));
        parameters = parameters(name, design, observations);
    }

    private static double[][] values(List<List<Estimate>> design, int n) {
        if (design.size() != n || n == 0) {
            throw new IllegalArgumentException(design.size() + " rows for " + n + " observations: must be as many");
        }
        int p = design.get(0).size();
        Arguments.unlessAtLeast("number of points of a fit of " + p + " parameters", n, Math.max(1, p));
        double[][] x = new double[n][];
        for (int i = 0; i < n; i++) {
            x[i] = design.get(i).stream().mapToDouble(Estimate::value).toArray();
            if (x[i].length != p) {
                throw new IllegalArgumentException("row " + (i + 1) + " of the design has " + x[i].length
                        + " columns, the first has " + p + ": must be as many");
            }
        }
        return x;
    }

    /** Error of each point against the line: dy - dX beta, as an estimate of value 0. */
    private List<Estimate> effective(List<List<Estimate>> design, List<Estimate> observations) {
        List<Estimate> effective = new ArrayList<>();
        for (int i = 0; i < residuals.length; i++) {
            List<Estimate> inputs = new ArrayList<>(design.get(i));
            inputs.add(observations.get(i));
            double[] sensitivities = new double[beta.length + 1];
            for (int j = 0; j < beta.length; j++) {
                sensitivities[j] = -beta[j];
            }
            sensitivities[beta.length] = 1;
            effective.add(Estimate.propagate(0, inputs, sensitivities));
        }
        return effective;
    }

    private double observedVariance() {
        return degreesOfFreedom() == 0 ? 0 : residualSumOfSquares() / degreesOfFreedom();
    }

    /** What the points' own influences let expect of the residual variance. */
    private double expectedVariance(List<Estimate> effective) {
        Set<Influence> influences = new LinkedHashSet<>();
        effective.forEach(point -> point.terms().forEach(term -> influences.add(term.influence())));
        double sum = 0;
        for (Influence influence : influences) {
            double[] e = effective.stream()
                    .mapToDouble(p -> p.coefficient(influence))
                    .toArray();
            for (double left : DesignMatrix.residuals(x, product(pseudoInverse, e), e)) {
                sum += left * left;
            }
        }
        return degreesOfFreedom() == 0 ? 0 : sum / degreesOfFreedom();
    }

    private static double[] product(double[][] matrix, double[] vector) {
        return MatrixUtils.createRealMatrix(matrix).operate(vector);
    }

    /** d beta = B (dy - dX beta) + (X'X)^-1 dX' r, with B the pseudo-inverse, and the scatter about the fit. */
    private List<Estimate> parameters(String name, List<List<Estimate>> design, List<Estimate> observations) {
        List<Estimate> scatter = scatter(name);
        List<Estimate> inputs = new ArrayList<>(observations);
        design.forEach(inputs::addAll);
        List<Estimate> estimates = new ArrayList<>();
        for (int j = 0; j < beta.length; j++) {
            List<Estimate> all = new ArrayList<>(inputs);
            all.add(scatter.get(j));
            estimates.add(Estimate.propagate(beta[j], all, sensitivities(j)));
        }
        return List.copyOf(estimates);
    }

    private double[] sensitivities(int j) {
        int n = residuals.length;
        int p = beta.length;
        double[] c = new double[n + n * p + 1];
        for (int i = 0; i < n; i++) {
            c[i] = pseudoInverse[j][i];
            for (int k = 0; k < p; k++) {
                c[n + i * p + k] = -pseudoInverse[j][i] * beta[k] + unscaledCovariance[j][k] * residuals[i];
            }
        }
        c[c.length - 1] = 1;
        return c;
    }

    private List<Estimate> scatter(String name) {
        double[] zeros = new double[beta.length];
        if (excessVariance == 0) {
            return Arrays.stream(zeros).mapToObj(Estimate::exact).toList();
        }
        double[][] covariance = MatrixUtils.createRealMatrix(unscaledCovariance)
                .scalarMultiply(excessVariance)
                .getData();
        return Simultaneous.correlated("scatter about the " + name, zeros, covariance, degreesOfFreedom());
    }

    /** The fitted parameters, in the order of the columns. */
    public List<Estimate> parameters() {
        return parameters;
    }

    /** Points less parameters, 0 or more. */
    public int degreesOfFreedom() {
        return residuals.length - beta.length;
    }

    /** y less the fit, in the order of the points. */
    public double[] residuals() {
        return residuals.clone();
    }

    public double residualSumOfSquares() {
        double sum = 0;
        for (double residual : residuals) {
            sum += residual * residual;
        }
        return sum;
    }

    /** Root of residual sum of squares over degrees of freedom; 0 where there are none. */
    public double residualStandardDeviation() {
        return Math.sqrt(observedVariance());
    }

    /** The part of the residual variance that the points' own uncertainty does not explain, 0 or more. */
    public double excessVariance() {
        return excessVariance;
    }

    /**
     * Largest over smallest singular value of the design with its columns brought to equal length, 1 or more. Above
     * some 30 the points hardly tell the parameters apart (Belsley, Kuh and Welsch's rule, from memory).
     */
    public double conditionNumber() {
        return conditionNumber;
    }

    /** The fit at a row of regressors. */
    public Estimate at(double... row) {
        if (row.length != beta.length) {
            throw new IllegalArgumentException(row.length + " regressors: must be " + beta.length);
        }
        double value = 0;
        for (int j = 0; j < row.length; j++) {
            value += row[j] * beta[j];
        }
        return Estimate.propagate(value, parameters, row);
    }
}
