package railwitness.analysis.uncertainty;

import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * The matrix of a linear fit, its columns brought to length 1 and solved by QR; refused where its columns cannot be told
 * apart. The condition number is that of the scaled design.
 */
final class DesignMatrix {
    private final QRDecomposition qr;
    private final double[] scale;
    private final RealMatrix design;
    private final double conditionNumber;
    private final double[][] pseudoInverse;
    private final double[][] unscaledCovariance;

    DesignMatrix(double[][] x) {
        design = MatrixUtils.createRealMatrix(x);
        scale = new double[x[0].length];
        RealMatrix scaled = design.copy();
        for (int j = 0; j < scale.length; j++) {
            scale[j] = design.getColumnVector(j).getNorm();
            scaled.setColumnVector(j, design.getColumnVector(j).mapDivide(scale[j] == 0 ? 1 : scale[j]));
        }
        conditionNumber = new SingularValueDecomposition(scaled).getConditionNumber();
        if (!(conditionNumber < 1e12)) {
            throw new IllegalArgumentException("condition number of the fit is " + conditionNumber
                    + ": the points cannot tell the parameters apart, vary them independently");
        }
        qr = new QRDecomposition(scaled);
        pseudoInverse = unscaledInverse();
        RealMatrix b = MatrixUtils.createRealMatrix(pseudoInverse);
        unscaledCovariance = b.multiplyTransposed(b).getData();
    }

    private double[][] unscaledInverse() {
        double[][] inverse = qr.getSolver().getInverse().getData();
        for (int j = 0; j < scale.length; j++) {
            for (int i = 0; i < inverse[j].length; i++) {
                inverse[j][i] /= scale[j];
            }
        }
        return inverse;
    }

    /** Solved once and refined once against the residuals. */
    double[] solve(double[] y) {
        double[] beta = solveOnce(y);
        double[] correction = solveOnce(residuals(design.getData(), beta, y));
        for (int j = 0; j < beta.length; j++) {
            beta[j] += correction[j];
        }
        return beta;
    }

    private double[] solveOnce(double[] y) {
        double[] solved = qr.getSolver().solve(MatrixUtils.createRealVector(y)).toArray();
        for (int j = 0; j < solved.length; j++) {
            solved[j] /= scale[j];
        }
        return solved;
    }

    double conditionNumber() {
        return conditionNumber;
    }

    /** Parameters per unit of each observation, one row per parameter. */
    double[][] pseudoInverse() {
        return pseudoInverse;
    }

    /** Inverse of X'X. */
    double[][] unscaledCovariance() {
        return unscaledCovariance;
    }

    static double[] residuals(double[][] x, double[] beta, double[] y) {
        double[] residuals = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            double fitted = 0;
            for (int j = 0; j < beta.length; j++) {
                fitted += x[i][j] * beta[j];
            }
            residuals[i] = y[i] - fitted;
        }
        return residuals;
    }
}
