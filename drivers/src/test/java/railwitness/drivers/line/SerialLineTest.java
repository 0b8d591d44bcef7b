package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.PortSettings.Parity;

/** A real serial library over real pseudo-terminals. */
@Timeout(30)
class SerialLineTest {
    private static final Duration SECOND = Duration.ofSeconds(1);
    private static final Duration SHORT = Duration.ofMillis(60);

    private final List<String> heard = new CopyOnWriteArrayList<>();
    private volatile Function<String, Answer> answers = text -> Answer.of("re " + text, Duration.ZERO);
    private int enabled;
    private PeerTerminal far;
    private SerialLine line;

    @BeforeEach
    void open() {
        Terminal.assume();
        far = new PeerTerminal("peer", this::hear, "\r\n");
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
    private Answer hear(String message) {
        heard.add(message);
        if (message.startsWith("*ESE ")) {
            enabled = Integer.parseInt(message.substring(5, message.indexOf(';')));
            return Answer.of("+" + enabled, Duration.ZERO);
        }
        return message.equals("*OPC?") ? Answer.of("1", Duration.ZERO) : answers.apply(message);
    }

    private static LineException trouble(Runnable exchange) {
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
    void instrumentWithoutEventRegisterIsStillAskedAgainAfterASilence() {
        answers = text -> text.equals("A?") ? Answer.silence(Duration.ZERO) : Answer.of("re " + text, Duration.ZERO);
        try (PeerTerminal plain = new PeerTerminal(
                        "plain",
                        text -> text.startsWith("*") ? Answer.silence(Duration.ZERO) : answers.apply(text),
                        "\n");
                SerialLine other = SerialLine.open(PortSettings.usual(plain.device()))) {
            assertThat(trouble(() -> other.ask("A?", SHORT)).trouble()).isEqualTo(Trouble.NO_ANSWER);
            assertThat(other.ask("B?", Duration.ofMillis(400))).isEqualTo("re B?");
        }
    }

    @Test
    void startBannerIsNotAnAnswer() throws Exception {
        try (PseudoTerminal bare = new PseudoTerminal();
                SerialLine other = SerialLine.open(PortSettings.usual(bare.device()))) {
            bare.write("Ready.\r\n".getBytes(StandardCharsets.US_ASCII));
            Thread.sleep(50);
            CompletableFuture<Void> answered = CompletableFuture.runAsync(() -> {
                bare.read(SECOND);
                bare.write("12.5\n".getBytes(StandardCharsets.US_ASCII));
            });
            assertThat(other.ask("READ?", SECOND)).isEqualTo("12.5");
            answered.join();
            CompletableFuture.runAsync(() -> {
                bare.read(SECOND);
                bare.write("1\n".getBytes(StandardCharsets.US_ASCII));
            });
        }
    }

    @Test
    void unpluggedPortIsNamedWithinASecond() {
        try (PseudoTerminal bare = new PseudoTerminal()) {
            SerialLine other = SerialLine.open(PortSettings.usual(bare.device()));
            Runnable unplug = bare::close;
            CompletableFuture.runAsync(() -> {
                bare.read(SECOND);
                unplug.run();
            });
            LineException e = trouble(() -> other.ask("READ?", SECOND));
            assertThat(e.trouble()).isEqualTo(Trouble.UNPLUGGED);
            assertThat(e).hasMessage(bare.device() + ": the port has gone; plug the instrument in and start again");
            assertThat(trouble(() -> other.ask("READ?", SECOND)).trouble()).isEqualTo(Trouble.UNPLUGGED);
            assertThat(other.cutIn(new byte[] {'\n'})).isFalse();
            other.close();
        }
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
    void portInUseIsRefused() {
        LineException e = trouble(() -> SerialLine.open(PortSettings.usual(far.device())));
        assertThat(e.trouble()).isEqualTo(Trouble.IN_USE);
        assertThat(e)
                .hasMessage(
                        far.device() + ": the port is in use; close the other program that holds it, then start again");
    }

    @Test
    void portHeldByAnotherProcessIsInUseButCanBeShared() throws Exception {
        assertThat(OtherProcess.run("open", far.device())).isEqualTo("IN_USE");
        assertThat(OtherProcess.run("share", far.device())).isEqualTo("sent");
        assertThat(line.ask("NEXT?", SECOND)).isEqualTo("re NEXT?");
        assertThat(heard).contains("SHARED OFF");
    }

    @Test
    void lastTaskSendsBeforeTheLibraryClosesThePorts() throws Exception {
        line.close();
        assertThat(OtherProcess.run("exit", far.device())).isEqualTo("leaving");
        assertThat(heard).contains("LAST OFF").endsWith("*OPC?");
    }

    @Test
    void missingPathIsNoSuchPortEvenWhereItsLastPartExists() {
        for (String path : List.of("/no/such/place/tty0", "tty-none", "/dev/no-such-tty")) {
            LineException e = trouble(() -> SerialLine.open(PortSettings.usual(path)));
            assertThat(e.trouble()).isEqualTo(Trouble.NO_SUCH_PORT);
            assertThat(e).hasMessageStartingWith(path + ": no such port; is its cable in?");
        }
    }

    @Test
    void fileIsNoPort(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("port"), "");
        assertThat(trouble(() -> SerialLine.open(PortSettings.usual(file.toString())))
                        .trouble())
                .isEqualTo(Trouble.NO_SUCH_PORT);
    }

    @Test
    void symbolicLinkIsFollowed(@TempDir Path folder) throws Exception {
        try (PeerTerminal other = new PeerTerminal("other", this::hear, "\n")) {
            Path link = Files.createSymbolicLink(folder.resolve("meter"), Path.of(other.device()));
            try (SerialLine linked = SerialLine.open(PortSettings.usual(link.toString()))) {
                assertThat(linked.ask("READ?", SECOND)).isEqualTo("re READ?");
                assertThat(linked.port()).isEqualTo(link.toString());
            }
        }
    }

    @Test
    void settingsAndTerminatorOfTheSheetAreUsed() {
        line.close();
        PortSettings settings = new PortSettings(far.device(), 115200, 7, Parity.EVEN, 2, "\r");
        line = SerialLine.open(settings);
        assertThat(line.ask("READ?", SECOND)).isEqualTo("re READ?");
    }

    @Test
    void eightLinesAreAskedSideBySide() {
        List<CompletableFuture<Integer>> all = Arrays.stream(new int[8])
                .mapToObj(i -> CompletableFuture.supplyAsync(SerialLineTest::askHundred))
                .toList();
        assertThat(all).allSatisfy(one -> assertThat(one.join()).isEqualTo(100));
    }

    private static int askHundred() {
        try (PeerTerminal peer = new PeerTerminal("one", text -> Answer.of(text, Duration.ZERO), "\n");
                SerialLine own = SerialLine.open(PortSettings.usual(peer.device()))) {
            int right = 0;
            for (int i = 0; i < 100; i++) {
                right += own.ask("Q" + i, Duration.ofSeconds(5)).equals("Q" + i) ? 1 : 0;
            }
            return right;
        }
    }
}
