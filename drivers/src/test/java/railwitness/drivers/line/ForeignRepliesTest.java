package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
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

    /** A reply that is sent twice, the second time with a pause before its last mark: "9;129" would look like a reading. */
    @Test
    void theRestOfALineWhoseBeginningWasThrownAwayIsNoReply() throws InterruptedException {
        PseudoTerminal far = new PseudoTerminal();
        Thread instrument = new Thread(() -> cutOff(far), "instrument");
        instrument.setDaemon(true);
        instrument.start();
        try (SerialLine line = SerialLine.open(PortSettings.usual(far.device()))) {
            line.getToKnow(line.ask("*IDN?", Duration.ofSeconds(5)), Duration.ofSeconds(5));
            for (int i = 0; i < 30; i++) {
                assertThat(line.ask("MEAS:VOLT" + i + "?", Duration.ofSeconds(5)))
                        .isEqualTo("+" + i + ".25E+00");
            }
        } finally {
            far.close();
            instrument.join(2000);
        }
    }

    private static void cutOff(PseudoTerminal far) {
        AtomicInteger register = new AtomicInteger();
        StringBuilder message = new StringBuilder();
        String rest = "";
        try {
            while (true) {
                for (byte b : far.read(Duration.ofMillis(20))) {
                    if (b != '\n') {
                        message.append((char) b);
                        continue;
                    }
                    String reply = ForeignReplies.reply(message.toString(), register);
                    boolean twice = message.toString().endsWith(";*ESE?;*ESE?;*ESE?");
                    message.setLength(0);
                    if (reply != null) {
                        int cut = reply.length() - 5;
                        String said = rest + reply + "\n" + (twice ? reply.substring(0, cut) : "");
                        rest = twice ? reply.substring(cut) + "\n" : "";
                        far.write(said.getBytes(StandardCharsets.ISO_8859_1));
                    }
                }
            }
        } catch (IllegalStateException | LineException over) {
            return;
        }
    }

    private static void judge(ForeignReplies.Count count) {
        assertThat(count.foreign()).as("seed %d: %s", SEED, count).isZero();
        assertThat(count.own()).as("seed %d: %s", SEED, count).isGreaterThan(QUESTIONS / 2);
        assertThat(count.none()).as("seed %d: %s", SEED, count).isPositive();
        assertThat(count.thrownAway()).as("seed %d: %s", SEED, count).isPositive();
    }
}
