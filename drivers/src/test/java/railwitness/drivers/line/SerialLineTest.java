package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.PortSettings.Parity;

/** A real serial library over real pseudo-terminals. */
class SerialLineTest extends LineTest {
    @Override
    Far far(Peer peer, String terminator) {
        Terminal.assume();
        PeerTerminal terminal = new PeerTerminal("peer", peer, terminator);
        return new Far() {
            @Override
            public String device() {
                return terminal.device();
            }

            @Override
            public void close() {
                terminal.close();
            }
        };
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
}
