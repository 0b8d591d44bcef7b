package railwitness.logger.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railwitness.drivers.instrument.Condition;
import railwitness.logger.plan.Step;
import railwitness.logger.plan.Timing;
import railwitness.logger.store.StepOutcome;

class StepRunTest {
    private static final long SECOND = 1_000_000_000L;
    private static final Set<Condition> NOT_HOLDING = Set.of(Condition.NOT_HOLDING);

    private final StepRun run = new StepRun(
            new Step(
                    "load-sweep",
                    "50 %",
                    12,
                    Map.of(),
                    true,
                    new Timing(Duration.ofSeconds(2), Duration.ofSeconds(1)),
                    Duration.ZERO,
                    false),
            Set.of(),
            0);

    @Test
    void oneLoadThatHoldsDoesNotEndTheTroubleOfAnotherWhoseNameBeginsAlike() {
        run.inPlace(0);
        run.conditions("load 2", NOT_HOLDING, 0);
        run.conditions("load", Set.of(), SECOND / 10);
        run.tick(3 * SECOND);
        assertThat(run.entry()).hasValueSatisfying(entry -> {
            assertThat(entry.outcome()).isEqualTo(StepOutcome.NOT_REACHED);
            assertThat(entry.reason()).isEqualTo("load 2 cannot hold its set point");
        });
    }

    @Test
    void eachOfTwoThatLimitMustRecover() {
        run.inPlace(0);
        run.conditions("load", NOT_HOLDING, 0);
        run.conditions("supply", Set.of(Condition.LIMITING), 1);
        run.conditions("supply", Set.of(), SECOND / 2);
        run.tick(3 * SECOND);
        assertThat(run.entry())
                .hasValueSatisfying(entry -> assertThat(entry.reason()).isEqualTo("load cannot hold its set point"));
    }

    @Test
    void aStepIsAveragedOnceAllHaveRecovered() {
        run.inPlace(0);
        run.conditions("load", NOT_HOLDING, 0);
        run.conditions("supply", Set.of(Condition.LIMITING), 1);
        run.conditions("supply", Set.of(), SECOND / 2);
        run.conditions("load", Set.of(), SECOND / 2);
        run.tick(3 * SECOND);
        run.tick(5 * SECOND);
        assertThat(run.entry())
                .hasValueSatisfying(entry -> assertThat(entry.outcome()).isEqualTo(StepOutcome.MEASURED));
    }
}
