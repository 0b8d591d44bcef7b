package railwitness.logger.recording.importing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.function.Consumer;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;

/** The steps of an imported table: each from its first row to its last. */
final class ImportedSteps {
    static final List<String> STAGES =
            List.of("standby", "power-up", "no-load", "load-sweep", "line-sweep", "cross-load", "hold");

    private final Consumer<StepEntry> taken;
    private Optional<Begun> open = Optional.empty();
    private long lastNanos;

    /**
     * A step as its first row has it.
     *
     * @param beginNanos when its set points were sent, at the latest when its average begins
     * @param inputVolts set point of the supply; empty where the table does not say
     * @param loadAmps set points of the loads; empty where the table does not say
     */
    record Begun(
            String stage,
            String step,
            long beginNanos,
            long fromNanos,
            boolean settled,
            OptionalDouble inputVolts,
            SortedMap<String, Double> loadAmps) {}

    ImportedSteps(Consumer<StepEntry> taken) {
        this.taken = taken;
    }

    boolean isOpen() {
        return open.isPresent();
    }

    void begin(Begun next) {
        end();
        open = Optional.of(next);
        lastNanos = next.fromNanos();
    }

    void at(long nanos) {
        lastNanos = nanos;
    }

    void end() {
        open.ifPresent(step -> taken.accept(new StepEntry(
                step.stage(),
                step.step(),
                step.beginNanos(),
                Optional.of(new TimeSpan(step.fromNanos(), lastNanos + 1)),
                step.settled(),
                StepOutcome.MEASURED,
                "",
                step.inputVolts(),
                step.loadAmps())));
        open = Optional.empty();
    }
}
