package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * One load for a long time, or a cycle of loads and inputs: burn-in, soak. What is averaged at its begin and its end is
 * the constant load.
 *
 * @param loadPercent of full load, all rails
 * @param duration from settled to the last average, above zero
 * @param rules what ends, interrupts or guards it
 * @param cycle rows that follow each other over and over; empty for a constant load
 */
public record Hold(double loadPercent, Duration duration, Timing timing, HoldRules rules, List<HoldPart> cycle)
        implements Stage {
    public Hold {
        cycle = List.copyOf(cycle);
    }

    /** A constant load that nothing but its time ends. */
    public Hold(double loadPercent, Duration duration, Timing timing) {
        this(loadPercent, duration, timing, HoldRules.none(), List.of());
    }

    @Override
    public String word() {
        return "hold";
    }

    /** Its load, in words; several holds of a plan may share it. */
    String loadWords() {
        return Percent.words(loadPercent) + (cycle.isEmpty() ? "" : " cycled");
    }

    @Override
    public List<Step> steps(Rating rating) {
        return steps(rating, loadWords());
    }

    /** @param name of this hold alone within its plan */
    List<Step> steps(Rating rating, String name) {
        var amps = rating.atPercent(loadPercent);
        List<CyclePart> parts = cycle.stream()
                .map(part -> new CyclePart(
                        part.length(),
                        part.inputVolts().orElse(rating.nominalInputVolts()),
                        rating.atPercent(part.loadPercent()),
                        part.off()))
                .toList();
        Step end = new Step(word(), name + " end", rating.nominalInputVolts(), amps, true, timing, duration, false);
        return List.of(
                new Step(word(), name + " begin", rating.nominalInputVolts(), amps, timing),
                end.held(new Holding(rules, parts)));
    }

    /** How it is held, for a person who leaves the room. */
    public Optional<Duration> leftAlone() {
        return duration.compareTo(Duration.ofHours(1)) >= 0 ? Optional.of(duration) : Optional.empty();
    }
}
