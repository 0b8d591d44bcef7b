package railwitness.analysis.soak;

/** The linear part of the thermal fit: for given time constants the levels follow by least squares. */
final class WarmUpSums {
    private final ThermalRecord record;
    private final double[] begins;
    private final int parts;
    private double followedFor = Double.NaN;
    private double[] rise;
    private double fastFor = Double.NaN;
    private double[] fast;

    /**
     * What is known before.
     *
     * @param shareMean of the second body's part in the first one's
     * @param width of that part, K
     * @param variance of one mean about the curve, K2; infinite where it is not known yet
     * @param worth independent means in the record
     * @param floor added to the squares: no model is better than that, K2
     */
    record Prior(double shareMean, double width, double variance, double worth, double floor) {
        boolean known() {
            return variance < Double.POSITIVE_INFINITY;
        }
    }

    WarmUpSums(ThermalRecord record) {
        this.record = record;
        begins = record.begins();
        parts = record.segments();
    }

    private double[] rise(double slow) {
        if (record.ambient().isEmpty()) {
            return record.celsius();
        }
        if (slow != followedFor) {
            double[] followed = record.followed(slow);
            rise = new double[followed.length];
            for (int i = 0; i < rise.length; i++) {
                rise[i] = record.celsius()[i] - followed[i];
            }
            followedFor = slow;
        }
        return rise;
    }

    private double[] decay(double tau) {
        double half = record.width() / 2 / tau;
        double spread = half < 1e-4 ? 1 : half > 50 ? 0 : Math.sinh(half) / half;
        double[] out = new double[record.size()];
        for (int i = 0; i < out.length; i++) {
            out[i] = spread * Math.exp(-(record.seconds()[i] - begins[record.segment()[i]]) / tau);
        }
        return out;
    }

    WarmUpCell cell(double slow, double fastTau, double spacing, Prior prior) {
        double[] y = rise(slow);
        double[] e = decay(slow);
        int each = fastTau > 0 ? 2 : 1;
        if (each == 2 && fastTau != fastFor) {
            fast = decay(fastTau);
            fastFor = fastTau;
        }
        int p = 1 + parts * each;
        double[][] normal = new double[p][p];
        double[] right = new double[p];
        double base = y[y.length - 1];
        double yy = 0;
        for (int i = 0; i < y.length; i++) {
            double v = y[i] - base;
            int a = 1 + record.segment()[i] * each;
            yy += v * v;
            normal[0][0] += 1;
            right[0] += v;
            normal[0][a] += e[i];
            normal[a][a] += e[i] * e[i];
            right[a] += e[i] * v;
            if (each == 2) {
                double f = fast[i];
                normal[0][a + 1] += f;
                normal[a][a + 1] += e[i] * f;
                normal[a + 1][a + 1] += f * f;
                right[a + 1] += f * v;
            }
        }
        return solved(new double[] {slow, fastTau, spacing, base, yy}, normal, right, prior);
    }

    private WarmUpCell solved(double[] about, double[][] normal, double[] right, Prior prior) {
        int p = right.length;
        int each = about[1] > 0 ? 2 : 1;
        double scale = prior.known() ? prior.worth() / record.size() : 1;
        double ridge = prior.known() ? prior.variance() / (prior.width() * prior.width()) / scale : 0;
        for (int i = 0; i < p; i++) {
            normal[i][i] *= 1 + 1e-13;
        }
        if (each == 2) {
            for (int k = 0; k < parts; k++) {
                int a = 1 + k * 2;
                double m = prior.shareMean();
                normal[a + 1][a + 1] += ridge;
                normal[a][a + 1] -= ridge * m;
                normal[a][a] += ridge * m * m;
            }
        }
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < i; j++) {
                normal[i][j] = normal[j][i];
            }
        }
        double[][] root = cholesky(normal);
        if (root.length == 0) {
            return new WarmUpCell(
                    about[0],
                    about[1],
                    about[2],
                    begins,
                    new double[p],
                    new double[p][p],
                    Double.POSITIVE_INFINITY,
                    Double.NEGATIVE_INFINITY,
                    0);
        }
        double[][] inverse = inverse(normal);
        double[] beta = new double[p];
        double explained = 0;
        double logDet = 0;
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                beta[i] += inverse[i][j] * right[j];
            }
            explained += beta[i] * right[i];
            logDet += 2 * Math.log(root[i][i]);
        }
        double squares = Math.max(0, about[4] - explained);
        beta[0] += about[3];
        double logWeight = 0;
        if (prior.known()) {
            double dof = Math.max(1, prior.worth() - 3 - 2 * parts);
            double left = (squares + prior.floor()) * scale / prior.variance();
            logWeight = -0.5 * dof * Math.log(left) - 0.5 * logDet + (each == 2 ? 0.5 * parts * Math.log(ridge) : 0);
            for (double[] line : inverse) {
                for (int j = 0; j < p; j++) {
                    line[j] *= prior.variance() / scale;
                }
            }
        }
        return new WarmUpCell(about[0], about[1], about[2], begins, beta, inverse, squares, logWeight, 0);
    }

    double[] residuals(WarmUpCell cell) {
        double[] y = rise(cell.slowSeconds());
        double[] e = decay(cell.slowSeconds());
        boolean two = cell.fastSeconds() > 0;
        double[] f = two ? decay(cell.fastSeconds()) : e;
        double[] out = new double[y.length];
        for (int i = 0; i < out.length; i++) {
            int a = 1 + record.segment()[i] * (two ? 2 : 1);
            out[i] = y[i] - cell.beta()[0] - cell.beta()[a] * e[i] - (two ? cell.beta()[a + 1] * f[i] : 0);
        }
        return out;
    }

    /** Lower root; empty where the matrix cannot be told from a singular one. */
    private static double[][] cholesky(double[][] a) {
        int n = a.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                if (i == j) {
                    if (!(sum > 1e-14 * a[i][i])) {
                        return new double[0][];
                    }
                    l[i][i] = Math.sqrt(sum);
                } else {
                    l[i][j] = sum / l[j][j];
                }
            }
        }
        return l;
    }

    /** Inverse of a symmetric positive matrix; empty where it has none. */
    static double[][] inverse(double[][] a) {
        double[][] l = cholesky(a);
        int n = l.length;
        double[][] out = new double[n][n];
        for (int c = 0; c < n; c++) {
            double[] x = new double[n];
            for (int i = 0; i < n; i++) {
                double sum = i == c ? 1 : 0;
                for (int k = 0; k < i; k++) {
                    sum -= l[i][k] * x[k];
                }
                x[i] = sum / l[i][i];
            }
            for (int i = n - 1; i >= 0; i--) {
                double sum = x[i];
                for (int k = i + 1; k < n; k++) {
                    sum -= l[k][i] * out[k][c];
                }
                out[i][c] = sum / l[i][i];
            }
        }
        return out;
    }
}
