package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What ends, interrupts or guards a hold before its time.
 *
 * @param until stability rule by the name of its standard that ends the hold early
 * @param atLeast before this nothing ends it early
 * @param keyEvery so often a person must press a key, or the output goes off
 * @param hottestDegC beyond this at any thermometer the output goes off, degC
 * @param driftAlarmPercentPerHour a rail that drifts faster over the last half hour is told, % of its value per hour
 */
public record HoldRules(
        Optional<String> until,
        Duration atLeast,
        Optional<Duration> keyEvery,
        OptionalDouble hottestDegC,
        OptionalDouble driftAlarmPercentPerHour) {
    /** The name by which 10 CFR 430 is called in a plan. */
    public static final String POWER_RULE = "10 CFR 430 App. Z";

    /** Nothing but its time. */
    public static HoldRules none() {
        return new HoldRules(
                Optional.empty(), Duration.ZERO, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** Names that {@code until} may have. */
    public static List<String> names() {
        return java.util.stream.Stream.concat(
                        java.util.Arrays.stream(railwitness.analysis.soak.StabilityRule.values())
                                .map(railwitness.analysis.soak.StabilityRule::standard),
                        java.util.stream.Stream.of(POWER_RULE))
                .toList();
    }
}
