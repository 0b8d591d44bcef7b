package railwitness.analysis.soak;

import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;
import railwitness.analysis.steady.Autocorrelation;
import railwitness.analysis.uncertainty.Estimate;

/**
 * The way to rest of one time constant: value = final + (start - final) exp(-t / tau), t from the first reading.
 *
 * <p>Found by least squares: for each tau the two levels follow linearly, tau itself by Brent's search on its
 * logarithm. Uncertainties come from the scatter about the curve (to first order, autocorrelation reckoned with) and
 * are correlated; no instrument's accuracy is in them.
 *
 * @param start at the first reading, in the unit of the readings
 * @param end what it tends to
 * @param timeConstantSeconds tau
 */
public record ThermalFit(Estimate start, Estimate end, Estimate timeConstantSeconds) {
    private static final int LEAST_READINGS = 6;
    private static final double LEAST_WORTH = 4;
    private static final int GRID = 80;
    private static final double SHORTEST = 1.0 / 100;
    private static final double LONGEST = 3.0;

    /**
     * Fits a record.
     *
     * @param seconds time of each reading, rising
     * @param values as many
     * @return absent where the record cannot tell: fewer than six readings, nothing changes, the record is shorter
     *     than a third of the time constant, or the time constant is not known to better than itself
     */
    public static Optional<ThermalFit> of(double[] seconds, double[] values) {
        if (seconds.length != values.length) {
            throw new IllegalArgumentException(
                    seconds.length + " times for " + values.length + " values: must be as many");
        }
        int n = values.length;
        if (n < LEAST_READINGS || !(seconds[n - 1] > seconds[0])) {
            return Optional.empty();
        }
        Curve curve = new Curve(seconds, values);
        double span = seconds[n - 1] - seconds[0];
        double logTau = search(curve, Math.log(span * SHORTEST), Math.log(span * LONGEST));
        boolean atTheEdge = logTau > Math.log(span * LONGEST * 0.98) || logTau < Math.log(span * SHORTEST * 1.02);
        return atTheEdge ? Optional.empty() : curve.fit(Math.exp(logTau)).filter(ThermalFit::told);
    }

    private boolean told() {
        Estimate rise = end.minus(start);
        return timeConstantSeconds.u() < timeConstantSeconds.value()
                && Math.abs(rise.value()) > 3 * rise.u()
                && Math.abs(rise.value()) > 1e-12 * Math.abs(start.value());
    }

    private static double search(Curve curve, double low, double high) {
        double step = (high - low) / GRID;
        double best = low;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= GRID; i++) {
            double squares = curve.squares(Math.exp(low + i * step));
            if (squares < least) {
                least = squares;
                best = low + i * step;
            }
        }
        UnivariatePointValuePair found = new BrentOptimizer(1e-10, 1e-12)
                .optimize(
                        new MaxEval(200),
                        GoalType.MINIMIZE,
                        new UnivariateObjectiveFunction(logTau -> curve.squares(Math.exp(logTau))),
                        new SearchInterval(Math.max(low, best - step), Math.min(high, best + step)));
        return found.getPoint();
    }

    /** Value at a time after the first reading. */
    public Estimate at(double seconds) {
        double tau = timeConstantSeconds.value();
        double left = Math.exp(-seconds / tau);
        double rise = start.value() - end.value();
        return Estimate.propagate(
                end.value() + rise * left,
                List.of(start, end, timeConstantSeconds),
                left,
                1 - left,
                rise * left * seconds / (tau * tau));
    }

    /** Change still to come at a time after the first reading, in the unit of the readings. */
    public Estimate leftAt(double seconds) {
        return end.minus(at(seconds));
    }

    /** Seconds after which the given fraction of the whole change is left, between 0 and 1: -tau ln(fraction). */
    public Estimate secondsUntilLeft(double fraction) {
        if (!(fraction > 0 && fraction < 1)) {
            throw new IllegalArgumentException("fraction left is " + fraction + ": must lie between 0 and 1");
        }
        return timeConstantSeconds.scale(-Math.log(fraction));
    }

    /** The readings, and what a time constant leaves of them. */
    private static final class Curve {
        private final double[] times;
        private final double[] values;

        Curve(double[] seconds, double[] values) {
            times = Autocorrelation.blocked(seconds.clone());
            for (int i = 0; i < times.length; i++) {
                times[i] -= seconds[0];
            }
            this.values = Autocorrelation.blocked(values);
        }

        /** End and rise (start less end) for a time constant, by simple regression on exp(-t / tau). */
        private double[] levels(double tau) {
            double meanE = 0;
            double meanY = 0;
            for (int i = 0; i < times.length; i++) {
                meanE += Math.exp(-times[i] / tau) / times.length;
                meanY += values[i] / times.length;
            }
            double see = 0;
            double sey = 0;
            for (int i = 0; i < times.length; i++) {
                double e = Math.exp(-times[i] / tau) - meanE;
                see += e * e;
                sey += e * (values[i] - meanY);
            }
            double rise = see == 0 ? 0 : sey / see;
            return new double[] {meanY - rise * meanE, rise};
        }

        double squares(double tau) {
            double sum = 0;
            for (double residual : residuals(tau, levels(tau))) {
                sum += residual * residual;
            }
            return sum;
        }

        private double[] residuals(double tau, double[] levels) {
            double[] residuals = new double[times.length];
            for (int i = 0; i < times.length; i++) {
                residuals[i] = values[i] - levels[0] - levels[1] * Math.exp(-times[i] / tau);
            }
            return residuals;
        }

        Optional<ThermalFit> fit(double tau) {
            double[] levels = levels(tau);
            double[] found = {levels[0] + levels[1], levels[0], tau};
            double[] residuals = residuals(tau, levels);
            double worth = Math.max(LEAST_WORTH, Autocorrelation.worth(residuals, 3));
            double squares = squares(tau);
            double variance = squares / (worth - 3);
            Optional<double[][]> inverse = inverseOfNormal(jacobian(tau, levels[1]));
            return inverse.map(i -> {
                double[][] covariance =
                        MatrixUtils.createRealMatrix(i).scalarMultiply(variance).getData();
                List<Estimate> e =
                        Estimate.fromCovariance("scatter about the thermal curve", found, covariance, worth - 3);
                return new ThermalFit(e.get(0), e.get(1), e.get(2));
            });
        }

        /** Derivatives by start, end and tau. */
        private double[][] jacobian(double tau, double rise) {
            double[][] jacobian = new double[times.length][];
            for (int i = 0; i < times.length; i++) {
                double e = Math.exp(-times[i] / tau);
                jacobian[i] = new double[] {e, 1 - e, rise * e * times[i] / (tau * tau)};
            }
            return jacobian;
        }

        private static Optional<double[][]> inverseOfNormal(double[][] jacobian) {
            RealMatrix r = new QRDecomposition(MatrixUtils.createRealMatrix(jacobian))
                    .getR()
                    .getSubMatrix(0, 2, 0, 2);
            for (int j = 0; j < 3; j++) {
                if (Math.abs(r.getEntry(j, j)) < 1e-14 * Math.abs(r.getEntry(0, 0))) {
                    return Optional.empty();
                }
            }
            RealMatrix inverse = MatrixUtils.inverse(r);
            return Optional.of(inverse.multiplyTransposed(inverse).getData());
        }
    }
}
