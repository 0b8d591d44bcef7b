package railwitness.logger.importing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import railwitness.logger.store.SessionWriter;
import railwitness.logger.store.StepEntry;
import railwitness.logger.store.StepOutcome;
import railwitness.logger.store.TimeSpan;

/** The steps of an imported table: each from its first row to its last, taken as settled. */
final class ImportedSteps {
    static final List<String> STAGES =
            List.of("standby", "power-up", "no-load", "load-sweep", "line-sweep", "cross-load", "hold");

    private final SessionWriter writer;
    private String stage;
    private String step;
    private long fromNanos;
    private long lastNanos;

    ImportedSteps(SessionWriter writer) {
        this.writer = writer;
    }

    void begin(String nextStage, String nextStep, long nanos) {
        end();
        stage = nextStage;
        step = nextStep;
        fromNanos = nanos;
        lastNanos = nanos;
    }

    void at(long nanos) {
        lastNanos = nanos;
    }

    void end() {
        if (stage != null) {
            writer.step(new StepEntry(
                    stage,
                    step,
                    fromNanos,
                    Optional.of(new TimeSpan(fromNanos, lastNanos + 1)),
                    true,
                    StepOutcome.MEASURED,
                    "",
                    OptionalDouble.empty(),
                    new TreeMap<>()));
        }
    }
}
