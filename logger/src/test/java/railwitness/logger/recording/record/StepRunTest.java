package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.plan.Timing;
import railwitness.logger.recording.store.StepOutcome;

/** One step by itself: when it settles, when it is averaged, and what never becomes an average. */
class StepRunTest {
    private static final Channel PLUS = Channel.of("plus.voltage");
    private static final Channel INPUT = Channel.of("input.voltage");
    private static final long SECOND = 1_000_000_000L;

    private static StepRun run(double settleAtMost, double hold) {
        Step step = new Step(
                "load-sweep",
                "50 %",
                13.8,
                Map.of("plus", 2.0),
                true,
                new Timing(Duration.ofMillis((long) (settleAtMost * 1000)), Duration.ofSeconds(2)),
                Duration.ofMillis((long) (hold * 1000)),
                false);
        return new StepRun(step, Set.of(PLUS), Set.of(PLUS, INPUT), 0);
    }

    private static void reads(StepRun run, Channel channel, double askedSeconds, double repliedSeconds) {
        run.heard(new Measured(channel, 38, (long) (askedSeconds * SECOND), (long) (repliedSeconds * SECOND)));
    }

    private static void both(StepRun run, double seconds) {
        reads(run, PLUS, seconds, seconds + 0.05);
        reads(run, INPUT, seconds, seconds + 0.05);
        run.tick((long) ((seconds + 0.06) * SECOND));
    }

    @Test
    void itSettlesAndIsAveraged() {
        StepRun run = run(8, 0);
        run.inPlace(0);
        for (double seconds = 0.1; seconds < 8 && run.entry().isEmpty(); seconds += 0.5) {
            both(run, seconds);
        }
        assertThat(run.entry()).hasValueSatisfying(entry -> {
            assertThat(entry.outcome()).isEqualTo(StepOutcome.MEASURED);
            assertThat(entry.settled()).isTrue();
            assertThat(entry.average().orElseThrow().fromNanos()).isGreaterThanOrEqualTo(3 * SECOND);
        });
    }

    /** What was asked for before the set points stood is answered late: it is of the step before. */
    @Test
    void anAverageBeginsOnlyOnceEveryChannelWasAskedAnew() {
        StepRun run = run(0, 0);
        run.inPlace(SECOND);
        run.tick(SECOND);
        reads(run, PLUS, 1.1, 1.15);
        reads(run, INPUT, 0.9, 1.2);
        run.tick(SECOND * 13 / 10);
        assertThat(run.averaging()).isFalse();
        reads(run, INPUT, 1.4, 1.5);
        run.tick(SECOND * 16 / 10);
        assertThat(run.averaging()).isTrue();
    }

    @Test
    void anAverageEndsWithAReadingOfEachChannel() {
        StepRun run = run(0, 0);
        run.inPlace(0);
        both(run, 0.1);
        assertThat(run.averaging()).isTrue();
        reads(run, PLUS, 1, 1.1);
        run.tick(3 * SECOND);
        assertThat(run.entry()).isEmpty();
        reads(run, INPUT, 3.1, 3.2);
        run.tick(SECOND * 33 / 10);
        assertThat(run.entry()).isPresent();
    }

    @Test
    void aChannelThatIsNotReadHoldsItUpForAWhileOnly() {
        StepRun run = run(0, 0);
        run.inPlace(0);
        for (double seconds = 0.1; seconds < 20 && run.entry().isEmpty(); seconds += 0.5) {
            reads(run, PLUS, seconds, seconds);
            run.tick((long) (seconds * SECOND));
        }
        assertThat(run.entry()).isPresent();
    }

    @Test
    void aDoubtGivesTheAverageUpAndSettlesAnew() {
        StepRun run = run(8, 0);
        run.inPlace(0);
        double seconds = 0.1;
        for (; !run.averaging(); seconds += 0.5) {
            both(run, seconds);
        }
        run.doubted((long) (seconds * SECOND));
        assertThat(run.averaging()).isFalse();
        double doubted = seconds;
        for (; seconds < 20 && run.entry().isEmpty(); seconds += 0.5) {
            both(run, seconds);
        }
        assertThat(run.entry().orElseThrow().average().orElseThrow().fromNanos())
                .isGreaterThan((long) ((doubted + 2.5) * SECOND));
    }

    /** Hours of burn-in are not begun again for one reading. */
    @Test
    void aDoubtDuringAHoldDoesNotBeginItAgain() {
        StepRun run = run(0, 10);
        run.inPlace(0);
        for (double seconds = 0.1; seconds < 30 && run.entry().isEmpty(); seconds += 0.5) {
            both(run, seconds);
            if (seconds > 5 && seconds < 6) {
                run.doubted((long) (seconds * SECOND));
            }
        }
        assertThat(run.entry().orElseThrow().average().orElseThrow().toNanos()).isLessThan(14 * SECOND);
    }

    /** 'load' is the beginning of 'load 2', and another instrument. */
    @Test
    void oneInstrumentDoesNotClearTheStateOfAnother() {
        StepRun run = run(8, 0);
        run.inPlace(0);
        run.conditions("load 2", Set.of(Condition.NOT_HOLDING), SECOND);
        run.conditions("load", Set.of(), 2 * SECOND);
        run.conditions("load 2", Set.of(Condition.NOT_HOLDING), 5 * SECOND);
        assertThat(run.entry().orElseThrow().reason()).isEqualTo("load 2 cannot hold its set point");
    }

    @Test
    void limitingDuringTheAverageGivesThePointUp() {
        StepRun run = run(0, 0);
        run.inPlace(0);
        both(run, 0.1);
        run.conditions("supply", Set.of(Condition.LIMITING), SECOND);
        assertThat(run.entry().orElseThrow().outcome()).isEqualTo(StepOutcome.NOT_REACHED);
        assertThat(run.entry().orElseThrow().average()).isEmpty();
    }

    @Test
    void whatIsGivenUpStaysGivenUp() {
        StepRun run = run(0, 0);
        run.giveUp(StepOutcome.STOPPED, "the person");
        run.inPlace(SECOND);
        run.tick(9 * SECOND);
        assertThat(run.entry().orElseThrow().reason()).isEqualTo("the person");
    }

    @Test
    void eachOfTwoThatLimitMustRecover() {
        StepRun run = run(2, 0);
        run.inPlace(0);
        run.conditions("load", Set.of(Condition.NOT_HOLDING), 0);
        run.conditions("supply", Set.of(Condition.LIMITING), 1);
        run.conditions("supply", Set.of(), SECOND / 2);
        run.tick(3 * SECOND);
        assertThat(run.entry())
                .hasValueSatisfying(entry -> assertThat(entry.reason()).isEqualTo("load cannot hold its set point"));
    }

    @Test
    void aStepIsAveragedOnceAllHaveRecovered() {
        StepRun run = run(2, 0);
        run.inPlace(0);
        run.conditions("load", Set.of(Condition.NOT_HOLDING), 0);
        run.conditions("supply", Set.of(Condition.LIMITING), 1);
        run.conditions("supply", Set.of(), SECOND / 2);
        run.conditions("load", Set.of(), SECOND / 2);
        for (double seconds = 1; seconds < 9 && run.entry().isEmpty(); seconds += 0.5) {
            both(run, seconds);
        }
        assertThat(run.entry())
                .hasValueSatisfying(entry -> assertThat(entry.outcome()).isEqualTo(StepOutcome.MEASURED));
    }
}
