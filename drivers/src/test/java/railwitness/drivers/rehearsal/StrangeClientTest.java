package railwitness.drivers.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Isolated;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.World;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.time.RealScheduler;

/**
 * A general-purpose VISA library talks to the virtual instruments: pyvisa with its pure Python backend (Debian's
 * python3-pyvisa, python3-pyvisa-py). It shares no line with this program.
 */
@Isolated("it starts another program")
@Timeout(60)
class StrangeClientTest {
    private static final List<String> PYTHONS = List.of("/usr/bin/python3", "python3");
    private static final String CLIENT = """
            import sys, time, pyvisa
            manager = pyvisa.ResourceManager("@py")
            def opened(device):
                found = manager.open_resource("ASRL" + device + "::INSTR")
                found.read_termination = "\\n"
                found.write_termination = "\\n"
                found.timeout = 5000
                return found
            supply, meter = opened(sys.argv[1]), opened(sys.argv[2])
            print(supply.query("*IDN?"))
            for message in ("VOLT 13.8", "CURR 30", "OUTP ON", "OUTP:REL ON"):
                supply.write(message)
            print(supply.query("SYST:ERR?"))
            print(supply.query("VOLT?;OUTP?"))
            volts = 0
            for attempt in range(60):
                volts = float(meter.query("MEAS:VOLT:DC?"))
                if volts > 38:
                    break
                time.sleep(0.1)
            print(volts)
            print(meter.query_ascii_values("READ?")[0])
            supply.write("NONSENSE 1")
            print(supply.query("SYST:ERR?"))
            """;

    private static String said(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String words = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(40, TimeUnit.SECONDS)).isTrue();
        return words;
    }

    private static String python() throws InterruptedException {
        for (String python : PYTHONS) {
            try {
                if (said(python, "-c", "import pyvisa, pyvisa_py, serial; print('here')")
                        .contains("here")) {
                    return python;
                }
            } catch (IOException notThere) {
                // the next one may be
            }
        }
        return "";
    }

    @Test
    void aVisaLibrarySetsTheSupplyAndReadsTheRail() throws IOException, InterruptedException {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        String python = python();
        if (python.isEmpty()) {
            System.out.println("skipped: python3-pyvisa and python3-pyvisa-py are not installed");
        }
        Assumptions.assumeTrue(!python.isEmpty(), "python3-pyvisa and python3-pyvisa-py are not installed");
        RealScheduler clock = new RealScheduler();
        VirtualBench bench = new VirtualBench(
                new World(Specimen.usual(), 22), BenchOfTest.fixtures("scpi-1999"), 1, clock::nowNanos);
        try (StandIn standIn = new StandIn(bench, (name, on) -> {})) {
            Map<String, String> devices =
                    standIn.places().stream().collect(Collectors.toMap(StandIn.Place::name, StandIn.Place::device));
            String words = said(python, "-c", CLIENT, devices.get("supply"), devices.get("plus-meter"));
            List<String> lines = words.lines().toList();
            assertThat(lines).as(words).hasSize(6);
            assertThat(lines.get(0)).startsWith("Railwitness,virtual supply,supply,");
            assertThat(lines.get(1)).startsWith("0,");
            assertThat(lines.get(2)).matches("1\\.38\\d*E\\+?0?1;1|13\\.80*;1");
            assertThat(Double.parseDouble(lines.get(3))).isBetween(38.0, 43.0);
            assertThat(Double.parseDouble(lines.get(4))).isBetween(38.0, 43.0);
            assertThat(lines.get(5)).startsWith("-113,");
        }
    }
}
