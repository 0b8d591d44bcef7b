package railwitness.analysis.supply;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Reach;

/**
 * What one step of a plan measured, averaged.
 *
 * @param stage kind of the stage, as in a plan: standby, power-up, no-load, load-sweep, line-sweep, cross-load, hold
 * @param step what the plan calls the step
 * @param count readings averaged on the scarcest channel
 * @param fromSeconds start of the average, s of the session
 * @param toSeconds end of it, s
 * @param settled whether the readings had stopped drifting
 * @param input at the terminals or the supply, see {@code inputSource}
 * @param inputSource where its voltage was measured
 * @param setVolts what the supply was set to, V, where known
 * @param rails by name
 * @param temperatures by node, degC
 */
public record OperatingPoint(
        String stage,
        String step,
        int count,
        double fromSeconds,
        double toSeconds,
        boolean settled,
        InputPoint input,
        InputSource inputSource,
        OptionalDouble setVolts,
        Map<String, RailPoint> rails,
        Map<String, Estimate> temperatures) {
    /** Share of the power that instruments of unknown accuracy may be off by (common practice, no source). */
    private static final double UNSTATED = 0.03;

    /** Share by which readings of one step may belong to different moments while the unit has not settled. */
    private static final double UNSETTLED = 0.05;

    public OperatingPoint {
        rails = Collections.unmodifiableMap(new LinkedHashMap<>(rails));
        temperatures = Collections.unmodifiableMap(new LinkedHashMap<>(temperatures));
    }

    /** Starts a point; the builder needs the input's voltage and current and each rail's voltage. */
    public static PointBuilder of(String stage, String step) {
        return new PointBuilder(stage, step);
    }

    /** Into all loads, W. */
    public Estimate outputPower() {
        return Estimate.sum(rails.values().stream().map(RailPoint::power).toList());
    }

    /** Input less output power, W. */
    public Estimate loss() {
        return input.power().minus(outputPower());
    }

    /** Output over input power; empty where nothing is drawn, or where more comes out than accuracies allow. */
    public Optional<Estimate> efficiency() {
        Estimate out = outputPower();
        boolean drawn = input.power().value() > 0;
        boolean possible = drawn && -loss().value() <= Reach.of(loss()) + slack(out.value());
        return possible ? Optional.of(out.over(input.power())) : Optional.empty();
    }

    private double slack(double outWatts) {
        return (loss().known() ? 0 : UNSTATED * outWatts) + (settled ? 0 : UNSETTLED * outWatts);
    }

    /** The rail of that name, if it was measured. */
    public Optional<RailPoint> rail(String name) {
        return Optional.ofNullable(rails.get(name));
    }
}
