package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.List;

/**
 * One load for a long time: burn-in, soak.
 *
 * @param loadPercent of full load, all rails
 * @param duration from settled to the last average, above zero
 */
public record Hold(double loadPercent, Duration duration, Timing timing) implements Stage {
    @Override
    public String word() {
        return "hold";
    }

    @Override
    public List<Step> steps(Rating rating) {
        var amps = rating.atPercent(loadPercent);
        String name = Percent.words(loadPercent);
        return List.of(
                new Step(word(), name + " begin", rating.nominalInputVolts(), amps, timing),
                new Step(word(), name + " end", rating.nominalInputVolts(), amps, true, timing, duration, false));
    }
}
