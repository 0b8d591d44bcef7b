package railwitness.analysis.uncertainty;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/** Correlated estimates from a covariance matrix, kept as independent influences of one ensemble. */
final class Simultaneous {
    private Simultaneous() {}

    static List<Estimate> means(String name, List<double[]> series) {
        int quantities = Arguments.unlessAtLeast("number of quantities read together", series.size(), 1);
        int n = Arguments.unlessAtLeast("number of readings", series.get(0).length, 2);
        double[] means = new double[quantities];
        for (int i = 0; i < quantities; i++) {
            if (series.get(i).length != n) {
                throw new IllegalArgumentException("quantity " + (i + 1) + " has " + series.get(i).length
                        + " readings, the first has " + n + ": read together they must be as many");
            }
            means[i] = Moments.mean(series.get(i));
        }
        return correlated(name, means, covariance(series, means, n), n - 1);
    }

    private static double[][] covariance(List<double[]> series, double[] means, int n) {
        double[][] covariance = new double[means.length][means.length];
        for (int i = 0; i < means.length; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (int k = 0; k < n; k++) {
                    sum += (series.get(i)[k] - means[i]) * (series.get(j)[k] - means[j]);
                }
                covariance[i][j] = covariance[j][i] = sum / n / (n - 1.0);
            }
        }
        return covariance;
    }

    /**
     * Estimates with the given covariance, which may be singular: as many independent influences as there are
     * values, along the axes of the correlation matrix.
     */
    static List<Estimate> correlated(String name, double[] values, double[][] covariance, double degreesOfFreedom) {
        int n = values.length;
        double[] u = new double[n];
        for (int i = 0; i < n; i++) {
            u[i] = Math.sqrt(Math.max(0, covariance[i][i]));
        }
        EigenDecompositionSymmetric axes = new EigenDecompositionSymmetric(correlation(covariance, u));
        List<Influence> influences = influences(name, n, degreesOfFreedom);
        List<Estimate> estimates = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            List<Term> terms = new ArrayList<>();
            for (int a = 0; a < n && u[i] > 0; a++) {
                double length = Math.sqrt(Math.max(0, axes.getEigenvalue(a)));
                terms.add(new Term(
                        influences.get(a),
                        u[i] * length * axes.getEigenvector(a).getEntry(i)));
            }
            estimates.add(Estimate.of(values[i], terms));
        }
        return List.copyOf(estimates);
    }

    private static RealMatrix correlation(double[][] covariance, double[] u) {
        RealMatrix r = MatrixUtils.createRealIdentityMatrix(u.length);
        for (int i = 0; i < u.length; i++) {
            for (int j = 0; j < i; j++) {
                double rij = u[i] * u[j] == 0 ? 0 : covariance[i][j] / u[i] / u[j];
                r.setEntry(i, j, rij);
                r.setEntry(j, i, rij);
            }
        }
        return r;
    }

    private static List<Influence> influences(String name, int count, double degreesOfFreedom) {
        Ensemble ensemble = new Ensemble(name);
        List<Influence> influences = new ArrayList<>();
        for (int a = 0; a < count; a++) {
            influences.add(
                    new Influence(name + ", axis " + (a + 1), Shape.STUDENT, 1, "1", degreesOfFreedom, ensemble));
        }
        return influences;
    }
}
