package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.List;

/** Remote turn-on off: what the unit drains. */
public record Standby(Timing timing) implements Stage {
    @Override
    public String word() {
        return "standby";
    }

    @Override
    public List<Step> steps(Rating rating) {
        return List.of(new Step(
                word(), "drain", rating.nominalInputVolts(), rating.atPercent(0), false, timing, Duration.ZERO, false));
    }
}
