package railwitness.drivers.converter;

/** Small systems of linear equations, solved in place by elimination with row exchange. */
final class Linear {
    private Linear() {}

    /** Solves matrix x = right for the first n unknowns; right becomes x, the matrix is used up. */
    static void solve(double[][] matrix, double[] right, int n) {
        for (int column = 0; column < n; column++) {
            exchange(matrix, right, n, column);
            double pivot = matrix[column][column];
            pivot = Math.abs(pivot) < 1e-300 ? 1e-300 : pivot;
            for (int row = column + 1; row < n; row++) {
                double factor = matrix[row][column] / pivot;
                for (int k = column; k < n; k++) {
                    matrix[row][k] -= factor * matrix[column][k];
                }
                right[row] -= factor * right[column];
            }
        }
        for (int row = n - 1; row >= 0; row--) {
            for (int k = row + 1; k < n; k++) {
                right[row] -= matrix[row][k] * right[k];
            }
            double pivot = matrix[row][row];
            right[row] /= Math.abs(pivot) < 1e-300 ? 1e-300 : pivot;
        }
    }

    private static void exchange(double[][] matrix, double[] right, int n, int column) {
        int best = column;
        for (int row = column + 1; row < n; row++) {
            best = Math.abs(matrix[row][column]) > Math.abs(matrix[best][column]) ? row : best;
        }
        double[] line = matrix[column];
        matrix[column] = matrix[best];
        matrix[best] = line;
        double value = right[column];
        right[column] = right[best];
        right[best] = value;
    }
}
