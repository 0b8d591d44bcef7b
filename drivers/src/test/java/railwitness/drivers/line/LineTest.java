package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import railwitness.drivers.line.LineException.Trouble;

/** What holds on every wire: whatever carries the bytes, a line keeps its deadlines and each reply with its question. */
@Timeout(30)
abstract class LineTest {
    static final Duration SECOND = Duration.ofSeconds(1);
    static final Duration SHORT = Duration.ofMillis(60);

    final List<String> heard = new CopyOnWriteArrayList<>();
    volatile Function<String, Answer> answers = text -> Answer.of("re " + text, Duration.ZERO);
    private int enabled;
    Far far;
    SerialLine line;

    /** The other end of the wire. */
    interface Far extends AutoCloseable {
        String device();

        @Override
        void close();
    }

    abstract Far far(Peer peer, String terminator);

    @BeforeEach
    void open() {
        far = far(this::hear, "\r\n");
        line = SerialLine.open(PortSettings.usual(far.device()));
    }

    @AfterEach
    void close() {
        if (line != null) {
            line.close();
            far.close();
        }
    }

    /* Knows what IEEE 488.2 asks of every instrument here; the rest is the test's. */
    Answer hear(String message) {
        heard.add(message);
        if (message.startsWith("*ESE ")) {
            enabled = Integer.parseInt(message.substring(5, message.indexOf(';')));
            return Answer.of("+" + enabled, Duration.ZERO);
        }
        return message.equals("*OPC?") ? Answer.of("1", Duration.ZERO) : answers.apply(message);
    }

    static LineException trouble(Runnable exchange) {
        return catchThrowableOfType(LineException.class, exchange::run);
    }

    @Test
    void replyComesWithoutItsTerminator() {
        assertThat(line.ask("READ?", SECOND)).isEqualTo("re READ?");
    }

    @Test
    void silenceIsATimeOutAtItsExactDeadline() {
        answers = text -> Answer.silence(Duration.ZERO);
        line.ask("*OPC?", SECOND);
        long begun = System.nanoTime();
        LineException e = trouble(() -> line.ask("READ?", Duration.ofMillis(130)));
        assertThat(System.nanoTime() - begun).isGreaterThanOrEqualTo(130_000_000L);
        assertThat(e.trouble()).isEqualTo(Trouble.NO_ANSWER);
        assertThat(e.sent()).isEqualTo("READ?");
    }

    @Test
    void lateAnswersNeverBecomeTheNext() {
        long seed = 20260511;
        Random random = new Random(seed);
        answers = text -> Answer.of(text, random.nextInt(5) == 0 ? SHORT.plusMillis(10) : Duration.ZERO);
        int wrong = 0;
        int silent = 0;
        for (int i = 0; i < 150; i++) {
            String question = "Q" + i + "?";
            try {
                wrong += line.ask(question, SHORT).equals(question) ? 0 : 1;
            } catch (LineException late) {
                silent++;
            }
        }
        assertThat(silent).as("late ones, seed %d", seed).isBetween(10, 120);
        assertThat(wrong).as("answers to an earlier question, seed %d", seed).isZero();
    }

    @Test
    void cutInEndsTheExchangeAndItsReplyIsNotTheNext() throws Exception {
        CountDownLatch asked = new CountDownLatch(1);
        answers = text -> {
            asked.countDown();
            return Answer.of("re " + text, text.equals("SLOW?") ? Duration.ofMillis(300) : Duration.ZERO);
        };
        CompletableFuture<LineException> slow =
                CompletableFuture.supplyAsync(() -> trouble(() -> line.ask("SLOW?", Duration.ofSeconds(5))));
        asked.await();
        assertThat(line.cutIn("\nOUTP OFF\n".getBytes(StandardCharsets.US_ASCII)))
                .isTrue();
        assertThat(slow.get().trouble()).isEqualTo(Trouble.CUT_SHORT);
        assertThat(line.ask("NEXT?", SECOND)).isEqualTo("re NEXT?");
        assertThat(heard).containsSubsequence("SLOW?", "OUTP OFF", "NEXT?");
    }

    @Test
    void closingLosesNothing() {
        answers = text -> Answer.silence(Duration.ZERO);
        for (int i = 0; i < 1000; i++) {
            line.send("VOLT " + i);
        }
        line.close();
        assertThat(heard.stream().filter(text -> text.startsWith("VOLT"))).hasSize(1000);
        assertThat(heard).endsWith("*OPC?");
    }

    @Test
    void closingAfterAnUnansweredQuestionSendsNothingMore() {
        answers = text -> Answer.silence(Duration.ZERO);
        assertThat(trouble(() -> line.ask("READ?", SHORT)).trouble()).isEqualTo(Trouble.NO_ANSWER);
        line.close();
        assertThat(heard).containsExactly("READ?");
    }

    @Test
    void closedLineSaysSo() {
        line.close();
        assertThatThrownBy(() -> line.ask("READ?", SECOND)).hasMessageEndingWith("the line is closed");
        assertThat(line.cutIn(new byte[] {'\n'})).isFalse();
    }

    @Test
    void blockWithTerminatorsInsideArrivesWhole() {
        byte[] content = new byte[5000];
        new Random(7).nextBytes(content);
        content[4999] = '\r';
        answers = text -> text.equals("TRAC?")
                ? Answer.of(Block.of(content), Duration.ZERO)
                : Answer.of("re " + text, Duration.ZERO);
        assertThat(line.askBlock("TRAC?", SECOND)).isEqualTo(content);
        assertThat(line.ask("NEXT?", SECOND)).isEqualTo("re NEXT?");
    }

    @Test
    void spoiltBytesAreGarbled() {
        answers = text -> Answer.of("+1.2\u0001E+1", Duration.ZERO);
        assertThat(trouble(() -> line.ask("READ?", SECOND)).trouble()).isEqualTo(Trouble.GARBLED);
    }

    @Test
    void eightLinesAreAskedSideBySide() {
        List<CompletableFuture<Integer>> all = Arrays.stream(new int[8])
                .mapToObj(i -> CompletableFuture.supplyAsync(this::askHundred))
                .toList();
        assertThat(all).allSatisfy(one -> assertThat(one.join()).isEqualTo(100));
    }

    private int askHundred() {
        try (Far peer = far(text -> Answer.of(text, Duration.ZERO), "\n");
                SerialLine own = SerialLine.open(PortSettings.usual(peer.device()))) {
            int right = 0;
            for (int i = 0; i < 100; i++) {
                right += own.ask("Q" + i, Duration.ofSeconds(5)).equals("Q" + i) ? 1 : 0;
            }
            return right;
        }
    }
}
