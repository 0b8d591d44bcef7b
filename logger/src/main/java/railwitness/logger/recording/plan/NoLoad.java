package railwitness.logger.recording.plan;

import java.util.List;

/** Turned on, nothing drawn. */
public record NoLoad(Timing timing) implements Stage {
    @Override
    public String word() {
        return "no-load";
    }

    @Override
    public List<Step> steps(Rating rating) {
        return List.of(new Step(word(), "0 %", rating.nominalInputVolts(), rating.atPercent(0), timing));
    }
}
