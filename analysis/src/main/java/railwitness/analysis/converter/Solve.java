package railwitness.analysis.converter;

/** Few linear equations, by elimination with the largest pivot. */
final class Solve {
    private Solve() {}

    static double[] of(double[][] matrix, double[] right) {
        int n = right.length;
        double[][] m = new double[n][];
        double[] x = right.clone();
        for (int i = 0; i < n; i++) {
            m[i] = matrix[i].clone();
        }
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int i = k + 1; i < n; i++) {
                pivot = Math.abs(m[i][k]) > Math.abs(m[pivot][k]) ? i : pivot;
            }
            double[] row = m[k];
            m[k] = m[pivot];
            m[pivot] = row;
            double value = x[k];
            x[k] = x[pivot];
            x[pivot] = value;
            for (int i = k + 1; i < n; i++) {
                double factor = m[i][k] / m[k][k];
                for (int j = k; j < n; j++) {
                    m[i][j] -= factor * m[k][j];
                }
                x[i] -= factor * x[k];
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            for (int j = k + 1; j < n; j++) {
                x[k] -= m[k][j] * x[j];
            }
            x[k] /= m[k][k];
        }
        return x;
    }
}
