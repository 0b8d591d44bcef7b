package railwitness.analysis.soak;

import java.util.List;
import java.util.Optional;
import railwitness.analysis.steady.Autocorrelation;
import railwitness.analysis.uncertainty.Estimate;

/** Least squares over a time series: the scatter counts for as many independent readings as its memory leaves. */
final class CorrelatedFit {
    private static final double COLLINEAR = 1e-10;

    private CorrelatedFit() {}

    /**
     * Fits y by its columns and a constant.
     *
     * @param columns regressors, as long as y
     * @return one estimate per column, correlated; empty where the columns cannot be told apart or too little is there
     */
    static Optional<List<Estimate>> slopes(String name, double[] y, double[]... columns) {
        int p = columns.length;
        int n = y.length;
        if (n < p + 4) {
            return Optional.empty();
        }
        double[][] x = new double[p][];
        double[] scale = new double[p];
        for (int c = 0; c < p; c++) {
            x[c] = centred(columns[c]);
            scale[c] = Math.sqrt(dot(x[c], x[c]));
            if (!(scale[c] > 0)) {
                return Optional.empty();
            }
            for (int i = 0; i < n; i++) {
                x[c][i] /= scale[c];
            }
        }
        double[] v = centred(y);
        double[][] normal = new double[p][p];
        for (int a = 0; a < p; a++) {
            for (int b = 0; b < p; b++) {
                normal[a][b] = dot(x[a], x[b]);
            }
        }
        double[][] inverse = WarmUpSums.inverse(normal);
        if (inverse.length == 0 || inverse[0][0] > 1 / COLLINEAR) {
            return Optional.empty();
        }
        double[] beta = new double[p];
        for (int a = 0; a < p; a++) {
            for (int b = 0; b < p; b++) {
                beta[a] += inverse[a][b] * dot(x[b], v);
            }
        }
        double[] left = v.clone();
        for (int i = 0; i < n; i++) {
            for (int a = 0; a < p; a++) {
                left[i] -= beta[a] * x[a][i];
            }
        }
        return Optional.of(estimates(name, beta, inverse, scale, left));
    }

    private static List<Estimate> estimates(
            String name, double[] beta, double[][] inverse, double[] scale, double[] left) {
        int p = beta.length;
        int n = left.length;
        double worth = Math.max(p + 2.5, Autocorrelation.worth(left, p + 1));
        double variance = dot(left, left) / n * worth / (worth - p - 1) * n / worth;
        double[] values = new double[p];
        double[][] covariance = new double[p][p];
        for (int a = 0; a < p; a++) {
            values[a] = beta[a] / scale[a];
            for (int b = 0; b < p; b++) {
                covariance[a][b] = inverse[a][b] * variance / scale[a] / scale[b];
            }
        }
        return Estimate.fromCovariance(name, values, covariance, worth - p - 1);
    }

    static double[] centred(double[] values) {
        double mean = 0;
        for (double value : values) {
            mean += (value - values[0]) / values.length;
        }
        mean += values[0];
        double[] out = new double[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = values[i] - mean;
        }
        return out;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
