package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** The short form of {@link ForeignReplies}, whose long form is a command. */
@Execution(ExecutionMode.CONCURRENT)
@Timeout(120)
class ForeignRepliesTest {
    private static final int QUESTIONS = 1500;
    private static final int LINES = 6;
    private static final long SEED = 20261127;

    @BeforeEach
    void terminals() {
        Terminal.assume();
    }

    @Test
    void noReplyIsTakenForThatOfAnotherQuestion() {
        judge(ForeignReplies.sideBySide(QUESTIONS, SEED, LINES, ForeignReplies::of488));
    }

    @Test
    void norOfAnInstrumentThatKnowsItsIdentityAndItsReadingsAlone() {
        judge(ForeignReplies.sideBySide(QUESTIONS, SEED, LINES, ForeignReplies::ofBare));
    }

    private static void judge(ForeignReplies.Count count) {
        assertThat(count.foreign()).as("seed %d: %s", SEED, count).isZero();
        assertThat(count.own()).as("seed %d: %s", SEED, count).isGreaterThan(QUESTIONS / 2);
        assertThat(count.none()).as("seed %d: %s", SEED, count).isPositive();
        assertThat(count.thrownAway()).as("seed %d: %s", SEED, count).isPositive();
    }
}
