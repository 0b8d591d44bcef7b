package railwitness.safety.guardian;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.line.SerialPorts;

/** Real processes, real signals, real pseudo-terminals. */
@EnabledOnOs(OS.LINUX)
class GuardianTest {
    private static final Duration LONG = Duration.ofSeconds(10);

    private final FarEnd supply = new FarEnd();
    private final FarEnd load = new FarEnd();

    @AfterEach
    void close() {
        supply.close();
        load.close();
    }

    @Test
    void aKilledProgramLeavesSupplyThenLoadsOff() throws Exception {
        try (Victims victim = victim("beat")) {
            victim.kill();
            FarEnd.Heard off = supply.await("OUTP OFF"::equals, LONG);
            FarEnd.Heard loadOff = load.await("INP OFF"::equals, LONG);
            victim.awaitGuardiansEnd();
            assertThat(supply.isOn()).isFalse();
            assertThat(off.firstByteNanos()).isLessThan(loadOff.firstByteNanos());
            assertThat(supply.raw()).startsWith("\nOUTP OFF\n");
            assertThat(supply.messages()).contains("OUTP?");
        }
    }

    @Test
    void killingTheWholeProcessGroupDoesNotTakeTheGuardian() throws Exception {
        try (Victims victim = victim("beat")) {
            victim.killGroup();
            supply.await("OUTP OFF"::equals, LONG);
            assertThat(supply.isOn()).isFalse();
        }
    }

    @Test
    void aFrozenProgramIsSwitchedOff() throws Exception {
        try (Victims victim = victim("beat")) {
            victim.signal("STOP");
            supply.await("OUTP OFF"::equals, LONG);
            load.await("INP OFF"::equals, LONG);
            assertThat(supply.isOn()).isFalse();
        }
    }

    @Test
    void aProgramThatExitsWithoutDisarmingIsSwitchedOff() throws Exception {
        try (Victims victim = victim("exit")) {
            supply.await("OUTP OFF"::equals, LONG);
            victim.awaitGuardiansEnd();
        }
    }

    @Test
    void afterAnOrderlyEndNothingIsSent() throws Exception {
        try (Victims victim = victim("disarm")) {
            assertThat(victim.nextLine()).isEqualTo("disarmed true");
            victim.awaitGuardiansEnd();
            assertThat(supply.raw() + load.raw()).isEmpty();
        }
    }

    @Test
    void aCommandCutInHalfDoesNotSpoilTheOff() throws Exception {
        try (Victims victim = victim("half")) {
            supply.await("OUTP OFF"::equals, LONG);
            assertThat(supply.messages()).startsWith("VOLT 1", "OUTP OFF");
            victim.awaitGuardiansEnd();
        }
    }

    @Test
    void aSupplyThatIgnoresOffOnceIsToldAgain() throws Exception {
        supply.ignoringOff(1);
        try (Victims victim = victim("beat")) {
            victim.kill();
            victim.awaitGuardiansEnd();
            assertThat(supply.isOn()).isFalse();
        }
    }

    /** With a limit of zero bytes any write to a file, as on a full disk, would fail or end the process. */
    @Test
    void nothingIsWrittenToAnyFile() throws Exception {
        try (Victims victim = new Victims("ulimit -f 0;", "beat", 1, supply.device(), load.device())) {
            victim.kill();
            supply.await("OUTP OFF"::equals, LONG);
            load.await("INP OFF"::equals, LONG);
        }
    }

    @Test
    void aPortThatCannotBeOpenedMeansNoPower() {
        GuardianTask orders = orders("/dev/no-such-port");
        assertThatThrownBy(() -> Guardian.start(orders))
                .isInstanceOf(GuardianException.class)
                .hasMessage("the guardian did not start, so there is no power:"
                        + " the guardian cannot open /dev/no-such-port: there is no such device");
    }

    /** A port may stand on the sheet without its folder, as in {@code ttyUSB0}. */
    @Test
    void aPortByItsBareNameIsReachedAsTheProgramReachesIt() throws Exception {
        String name = "ttyFar" + ProcessHandle.current().pid();
        Path link = Path.of("/dev", name);
        try {
            Files.createSymbolicLink(link, Path.of(supply.device()));
        } catch (IOException notAllowed) {
            System.out.println("skipped: a name in /dev takes a right that this user has not");
            Assumptions.abort("a name in /dev takes a right that this user has not");
        }
        try (SerialLine line = SerialLine.open(PortSettings.usual(name))) {
            line.send("VOLT 1");
            Guardian guardian = Guardian.start(orders(SerialPorts.device(name)));
            assertThat(guardian.isGuarding()).isTrue();
            guardian.letFire();
            supply.await("OUTP OFF"::equals, LONG);
            assertThat(supply.isOn()).isFalse();
        } finally {
            Files.delete(link);
        }
    }

    @Test
    void aSupplyOnTheNetworkIsSwitchedOffOverAConnectionOfTheGuardiansOwn() throws Exception {
        try (ServerSocket instrument = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            instrument.setSoTimeout(10_000);
            Guardian guardian = Guardian.start(orders("tcp://127.0.0.1:" + instrument.getLocalPort()));
            try (Socket own = instrument.accept()) {
                own.setSoTimeout(10_000);
                guardian.letFire();
                BufferedReader heard =
                        new BufferedReader(new InputStreamReader(own.getInputStream(), StandardCharsets.US_ASCII));
                assertThat(heard.lines().filter(line -> !line.isEmpty()).findFirst())
                        .contains("OUTP OFF");
            }
        }
    }

    @Test
    void aNetworkSupplyThatTakesNoSecondConnectionMeansNoPower() throws Exception {
        int free;
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            free = taken.getLocalPort();
        }
        GuardianTask orders = orders("tcp://127.0.0.1:" + free);
        assertThatThrownBy(() -> Guardian.start(orders))
                .isInstanceOf(GuardianException.class)
                .hasMessageContaining("it takes no second connection");
    }

    @Test
    void aProgramThatSleptIsNotGuardedAnyMore() {
        AtomicLong clock = new AtomicLong();
        Guardian guardian = Guardian.start(orders(supply.device()), new Launch().command(), clock::get);
        clock.addAndGet(900_000_000);
        assertThat(guardian.beat()).isEqualTo(Guardian.Standing.GUARDING);
        clock.addAndGet(1_100_000_000);
        assertThat(guardian.beat()).isEqualTo(Guardian.Standing.LATE);
        assertThat(guardian.isGuarding()).isFalse();
        assertThat(guardian.beat()).isEqualTo(Guardian.Standing.LATE);
        guardian.letFire();
    }

    @Test
    void aKilledGuardianIsNoticed() throws Exception {
        Guardian guardian = Guardian.start(orders(supply.device()));
        ProcessHandle.current().children().filter(FarAway::isGuardian).forEach(FarAway::kill);
        for (int i = 0; i < 100 && guardian.beat() == Guardian.Standing.GUARDING; i++) {
            TimeUnit.MILLISECONDS.sleep(50);
        }
        assertThat(guardian.standing()).isEqualTo(Guardian.Standing.LOST);
    }

    @Test
    void ordersSurviveTheWay() throws Exception {
        GuardianTask orders = new GuardianTask(
                Duration.ofMillis(700),
                List.of(new GuardianTask.Supply("/dev/tty with space", new byte[] {10, 0, -1}, new byte[] {1})),
                List.of(new GuardianTask.Load("COM3", new byte[] {2})));
        GuardianTask back =
                GuardianTask.read(new java.io.ByteArrayInputStream(orders.text().getBytes(StandardCharsets.US_ASCII)));
        assertThat(back).usingRecursiveComparison().isEqualTo(orders);
    }

    private static final class FarAway {
        static boolean isGuardian(ProcessHandle process) {
            return process.info().commandLine().orElse("").contains(GuardianMain.class.getName());
        }

        static void kill(ProcessHandle process) {
            process.descendants().forEach(ProcessHandle::destroyForcibly);
            process.destroyForcibly();
        }
    }

    private Victims victim(String how) throws Exception {
        return new Victims("", how, 1, supply.device(), load.device());
    }

    private static GuardianTask orders(String device) {
        byte[] off = "\nOUTP OFF\n".getBytes(StandardCharsets.US_ASCII);
        byte[] ask = "OUTP?\n".getBytes(StandardCharsets.US_ASCII);
        return new GuardianTask(
                GuardianTask.USUAL_PATIENCE, List.of(new GuardianTask.Supply(device, off, ask)), List.of());
    }
}
