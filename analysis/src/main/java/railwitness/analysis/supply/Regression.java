package railwitness.analysis.supply;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import railwitness.analysis.uncertainty.Estimate;

/**
 * Least squares {@code y = sum of b_j x_j} over points whose x and y are estimates. The coefficients carry what the
 * points' uncertainties do to them, to first order, through y and through every x (implicit differentiation of the
 * normal equations); what the points share, the coefficients share.
 *
 * @param coefficients one per column
 * @param residuals y less fit, in y's unit
 * @param condition largest over smallest singular value of the columns brought to equal length; 1 is perfect
 */
record Regression(List<Estimate> coefficients, double[] residuals, double condition) {

    /** Columns beyond this condition cannot be told apart by such points (a fiftyfold loss of accuracy). */
    static final double ILL_CONDITIONED = 50;

    /** Standard uncertainties within this factor of each other count as alike. */
    private static final double ALIKE = 1.5;

    /** No point counts as more certain than this share of the least certain one: even exact ones leave the line its doubt. */
    private static final double LEAST_SHARE = 0.05;

    /** Whether there are points enough, and points different enough, for the columns. */
    static boolean possible(List<List<Estimate>> columns) {
        int rows = columns.get(0).size();
        return rows >= columns.size() && Double.isFinite(condition(matrix(columns, rows)));
    }

    /**
     * Fits.
     *
     * @param columns x by column; a column of ones is an intercept
     * @throws IllegalArgumentException where {@link #possible} is false
     */
    static Regression of(List<List<Estimate>> columns, List<Estimate> y) {
        double[] alike = new double[y.size()];
        java.util.Arrays.fill(alike, 1);
        return of(columns, y, alike);
    }

    /**
     * Fits as {@link #of(List, List)}, each point weighted with the inverse square of its y's standard uncertainty where those
     * differ (weighted least squares, such as ISO/TS 28037:2010 clause 6).
     */
    static Regression weighted(List<List<Estimate>> columns, List<Estimate> y) {
        double[] u = y.stream().mapToDouble(Estimate::u).toArray();
        double largest = java.util.Arrays.stream(u).max().orElse(0);
        double least = java.util.Arrays.stream(u).min().orElse(0);
        double[] weights = new double[u.length];
        for (int i = 0; i < u.length; i++) {
            double own = Math.max(u[i], LEAST_SHARE * largest);
            weights[i] = largest > ALIKE * least ? largest * largest / (own * own) : 1;
        }
        return of(columns, y, weights);
    }

    private static Regression of(List<List<Estimate>> columns, List<Estimate> y, double[] weights) {
        int rows = y.size();
        RealMatrix x = matrix(columns, rows);
        double condition = condition(x);
        if (rows < columns.size() || !Double.isFinite(condition)) {
            throw new IllegalArgumentException(rows + " points cannot give " + columns.size() + " coefficients");
        }
        RealMatrix turned = x.transpose().multiply(MatrixUtils.createRealDiagonalMatrix(weights));
        RealMatrix normal = MatrixUtils.inverse(turned.multiply(x));
        RealMatrix rise = normal.multiply(turned);
        double[] values = y.stream().mapToDouble(Estimate::value).toArray();
        double[] b = rise.operate(values);
        double[] residuals = new double[rows];
        double[] fit = x.operate(b);
        for (int i = 0; i < rows; i++) {
            residuals[i] = values[i] - fit[i];
        }
        List<Estimate> coefficients = new ArrayList<>();
        for (int k = 0; k < b.length; k++) {
            coefficients.add(coefficient(k, b, weighed(residuals, weights), normal, rise, columns, y));
        }
        return new Regression(List.copyOf(coefficients), residuals, condition);
    }

    private static double[] weighed(double[] residuals, double[] weights) {
        double[] weighed = residuals.clone();
        for (int i = 0; i < weighed.length; i++) {
            weighed[i] *= weights[i];
        }
        return weighed;
    }

    private static Estimate coefficient(
            int k,
            double[] b,
            double[] residuals,
            RealMatrix normal,
            RealMatrix rise,
            List<List<Estimate>> columns,
            List<Estimate> y) {
        List<Estimate> inputs = new ArrayList<>(y);
        List<Double> sensitivities = new ArrayList<>();
        for (int i = 0; i < y.size(); i++) {
            sensitivities.add(rise.getEntry(k, i));
        }
        for (int j = 0; j < b.length; j++) {
            for (int i = 0; i < y.size(); i++) {
                inputs.add(columns.get(j).get(i));
                sensitivities.add(normal.getEntry(k, j) * residuals[i] - rise.getEntry(k, i) * b[j]);
            }
        }
        double[] c = sensitivities.stream().mapToDouble(Double::doubleValue).toArray();
        return Estimate.propagate(b[k], inputs, c);
    }

    private static RealMatrix matrix(List<List<Estimate>> columns, int rows) {
        RealMatrix x = new Array2DRowRealMatrix(rows, columns.size());
        for (int j = 0; j < columns.size(); j++) {
            for (int i = 0; i < rows; i++) {
                x.setEntry(i, j, columns.get(j).get(i).value());
            }
        }
        return x;
    }

    private static double condition(RealMatrix x) {
        if (x.getRowDimension() < x.getColumnDimension()) {
            return Double.POSITIVE_INFINITY;
        }
        RealMatrix scaled = x.copy();
        for (int j = 0; j < x.getColumnDimension(); j++) {
            double length = x.getColumnVector(j).getNorm();
            if (length == 0) {
                return Double.POSITIVE_INFINITY;
            }
            scaled.setColumnVector(j, x.getColumnVector(j).mapDivide(length));
        }
        double condition = new SingularValueDecomposition(scaled).getConditionNumber();
        return condition < 1e8 ? condition : Double.POSITIVE_INFINITY;
    }

    /** Largest magnitude of the residuals. */
    double largestResidual() {
        double largest = 0;
        for (double residual : residuals) {
            largest = Math.max(largest, Math.abs(residual));
        }
        return largest;
    }

    /** A column of ones. */
    static List<Estimate> ones(int rows) {
        return java.util.Collections.nCopies(rows, Estimate.exact(1));
    }
}
