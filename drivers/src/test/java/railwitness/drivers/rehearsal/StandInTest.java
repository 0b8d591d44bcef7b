package railwitness.drivers.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.World;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.time.RealScheduler;

/** The virtual bench over real pseudo-terminals in real time. */
@Isolated("it looks at all threads of the program")
class StandInTest {
    private final List<String> switched = Collections.synchronizedList(new ArrayList<>());
    private VirtualBench bench;
    private StandIn standIn;
    private Map<String, String> devices;

    @BeforeEach
    void serve() {
        assumeTrue(PseudoTerminal.available());
        RealScheduler clock = new RealScheduler();
        bench = new VirtualBench(
                new World(Specimen.usual(), 22), BenchOfTest.fixtures("scpi-1999"), 1, clock::nowNanos);
        standIn = new StandIn(bench, (name, on) -> switched.add(name + " " + on));
        devices = standIn.places().stream().collect(Collectors.toMap(StandIn.Place::name, StandIn.Place::device));
    }

    @AfterEach
    void end() {
        if (standIn != null) {
            standIn.close();
        }
        assertThat(Thread.getAllStackTraces().keySet())
                .noneMatch(thread -> thread.getName().startsWith("far end of"));
    }

    /** Opens the device, asks, and closes it again: a client that comes and goes. */
    private String ask(String name, String message) throws IOException {
        try (RandomAccessFile port = new RandomAccessFile(devices.get(name), "rw")) {
            port.write((message + "\n").getBytes(StandardCharsets.US_ASCII));
            return port.readLine();
        }
    }

    private void send(String name, String message) throws IOException {
        assertThat(ask(name, message + ";*OPC?")).isEqualTo("1");
    }

    @Test
    void everyInstrumentAnswersOnADeviceOfItsOwn() throws IOException {
        assertThat(devices).hasSize(10);
        assertThat(devices.values()).doesNotHaveDuplicates();
        for (String name : devices.keySet()) {
            assertThat(ask(name, "*IDN?")).contains(name);
        }
    }

    @Test
    void itSaysWhenTheOutputGoesOnAndOff() throws IOException {
        send("supply", "VOLT 13.8;CURR 5;OUTP ON");
        send("supply", "OUTP OFF");
        assertThat(switched).containsExactly("supply true", "supply false");
    }

    @Test
    void allInstrumentsLookAtTheSameUnit() throws IOException, InterruptedException {
        send("supply", "VOLT 13.8;CURR 30;OUTP ON");
        send("supply", "OUTP:REL ON");
        for (int k = 0; k < 100 && volts("plus-meter") < 38; k++) {
            Thread.sleep(50);
        }
        assertThat(volts("plus-meter")).isBetween(38.0, 43.0);
        assertThat(volts("minus-meter")).isBetween(-43.0, -38.0);
        assertThat(volts("input-meter")).isBetween(13.6, 13.9);
    }

    @Test
    void aVanishedInstrumentTakesItsDeviceAway() throws IOException {
        bench.instrument("plus-meter").trouble(Trouble.VANISHED);
        assertThat(answers("plus-meter")).isFalse();
        assertThat(ask("minus-meter", "*OPC?")).isEqualTo("1");
    }

    /** False when the device gives an end of file or an error instead of an answer. */
    private boolean answers(String name) {
        try {
            return ask(name, "*OPC?") != null;
        } catch (IOException gone) {
            return false;
        }
    }

    private double volts(String name) throws IOException {
        return Double.parseDouble(ask(name, "MEAS:VOLT:DC?"));
    }
}
