package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * One state of the bench.
 *
 * @param stage the stage's word, such as {@code load-sweep}
 * @param name what the sheet calls it, such as {@code 50 %}; unique within its stage
 * @param inputVolts setting of the supply, V
 * @param loadAmps by rail, A
 * @param remoteOn whether the unit is turned on
 * @param timing settling and averaging
 * @param hold how long the state is kept before it is averaged; zero for all but a hold
 * @param mayGiveUp whether the unit is expected to drop out here
 * @param holding how it is held; empty for all but a hold
 */
public record Step(
        String stage,
        String name,
        double inputVolts,
        Map<String, Double> loadAmps,
        boolean remoteOn,
        Timing timing,
        Duration hold,
        boolean mayGiveUp,
        Optional<Holding> holding) {
    public Step {
        loadAmps = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(loadAmps));
    }

    /** A step that is not held by rules of its own. */
    public Step(
            String stage,
            String name,
            double inputVolts,
            Map<String, Double> loadAmps,
            boolean remoteOn,
            Timing timing,
            Duration hold,
            boolean mayGiveUp) {
        this(stage, name, inputVolts, loadAmps, remoteOn, timing, hold, mayGiveUp, Optional.empty());
    }

    Step(String stage, String name, double inputVolts, Map<String, Double> loadAmps, Timing timing) {
        this(stage, name, inputVolts, loadAmps, true, timing, Duration.ZERO, false);
    }

    Step held(Holding by) {
        return new Step(stage, name, inputVolts, loadAmps, remoteOn, timing, hold, mayGiveUp, Optional.of(by));
    }

    /** The same step held for another time. */
    public Step heldFor(Duration time) {
        return new Step(stage, name, inputVolts, loadAmps, remoteOn, timing, time, mayGiveUp, holding);
    }

    /** The same step with the set points of one part of its cycle. */
    public Step at(CyclePart part) {
        return new Step(stage, name, part.inputVolts(), part.loadAmps(), remoteOn, timing, hold, mayGiveUp, holding);
    }

    /** Whether its load or input is cycled. */
    public boolean cycled() {
        return holding.filter(by -> !by.cycle().isEmpty()).isPresent();
    }

    /** Highest setting of the supply over the whole step, V. */
    public double highestVolts() {
        return holding.stream()
                .flatMap(by -> by.cycle().stream())
                .mapToDouble(CyclePart::inputVolts)
                .reduce(inputVolts, Math::max);
    }
}
