package railwitness.analysis.soak;

import java.util.List;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * How one quantity drifted while it was held.
 *
 * @param name what drifted: voltage, ripple, efficiency, input power
 * @param rail of which rail; empty where it is of none
 * @param perHour slope over the second half of the hold, in per cent of the mean per hour; where the drift is no straight
 *     line, by how much the slope changes over that half is in its uncertainty
 * @param byTemperature per cent of the mean per kelvin, where the temperature moved enough to tell
 * @param ageingPerHour what of the drift goes with time and not with temperature, per cent per hour
 */
public record HoldDrift(
        String name,
        Optional<String> rail,
        Estimate perHour,
        Optional<Estimate> byTemperature,
        Optional<Estimate> ageingPerHour) {
    private static final int MOST = 400;
    private static final int LEAST = 12;
    private static final double WARMING_SHARE = 0.05;
    private static final double LEAST_KELVIN = 0.3;
    private static final double MOVED_INPUT = 2e-4;
    private static final double HOUR = 3600;

    /**
     * Works out a drift.
     *
     * @param seconds of each column
     * @param values as many, NaN where nothing was read
     * @param temperature of the place that the quantity may follow, as many
     * @param inputVolts as many: what follows the input is no drift
     * @return empty where too little was read
     */
    static Optional<HoldDrift> of(
            String name,
            Optional<String> rail,
            double[] seconds,
            double[] values,
            Optional<double[]> temperature,
            Optional<double[]> inputVolts) {
        if (seconds.length < LEAST) {
            return Optional.empty();
        }
        double begin = seconds[0];
        double span = seconds[seconds.length - 1] - begin;
        Sampled late = Sampled.of(begin + span / 2, seconds, values).gathered(MOST);
        if (late.size() < LEAST || !(span > 0)) {
            return Optional.empty();
        }
        double mean = mean(late.columns()[0]);
        if (mean == 0) {
            return Optional.empty();
        }
        double toPercentPerHour = 100 * HOUR / Math.abs(mean) * Math.signum(mean);
        return slope(late).map(perSecond -> {
            Optional<List<Estimate>> apart = temperature.flatMap(
                    degrees -> apart(begin + WARMING_SHARE * span, seconds, values, degrees, inputVolts));
            return new HoldDrift(
                    name,
                    rail,
                    perSecond.scale(toPercentPerHour),
                    apart.map(both -> both.get(1).scale(toPercentPerHour / HOUR)),
                    apart.map(both -> both.get(0).scale(toPercentPerHour)));
        });
    }

    /** Line through the late part; a bend that can be told from scatter widens it. */
    private static Optional<Estimate> slope(Sampled late) {
        double[] y = late.columns()[0];
        double[] t = CorrelatedFit.centred(late.seconds());
        double half = (t[t.length - 1] - t[0]) / 2;
        double[] squared = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            squared[i] = t[i] * t[i];
        }
        Optional<Estimate> line =
                CorrelatedFit.slopes("scatter about the drift", y, t).map(one -> one.get(0));
        Optional<Estimate> bend =
                CorrelatedFit.slopes("scatter about the drift", y, t, squared).map(two -> two.get(1));
        return line.map(slope -> bend.filter(curve -> Math.abs(curve.value()) > 2 * curve.u())
                .map(curve -> {
                    double over = 2 * Math.abs(curve.value()) * half;
                    return slope.with(Influence.rectangular("the drift is no straight line", over, "1/s")
                            .times(1));
                })
                .orElse(slope));
    }

    /** Slopes by time and by temperature, and by the input where it moved; the first warming left out. */
    private static Optional<List<Estimate>> apart(
            double from, double[] seconds, double[] values, double[] degrees, Optional<double[]> inputVolts) {
        Sampled all = (inputVolts.isPresent()
                        ? Sampled.of(from, seconds, values, degrees, inputVolts.get())
                        : Sampled.of(from, seconds, values, degrees))
                .gathered(MOST);
        if (all.size() < LEAST || spread(all.columns()[1]) < LEAST_KELVIN) {
            return Optional.empty();
        }
        String name = "scatter about drift and temperature";
        boolean moved =
                inputVolts.isPresent() && spread(all.columns()[2]) > MOVED_INPUT * Math.abs(mean(all.columns()[2]));
        return moved
                ? CorrelatedFit.slopes(name, all.columns()[0], all.seconds(), all.columns()[1], all.columns()[2])
                        .or(() -> CorrelatedFit.slopes(name, all.columns()[0], all.seconds(), all.columns()[1]))
                : CorrelatedFit.slopes(name, all.columns()[0], all.seconds(), all.columns()[1]);
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private static double spread(double[] values) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return high - low;
    }
}
