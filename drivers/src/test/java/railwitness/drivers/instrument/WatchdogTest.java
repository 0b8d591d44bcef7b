package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.line.ReplayLine;
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.VirtualScheduler;

/** A supply that can switch itself off when it hears nothing, told so by its dialect. */
class WatchdogTest {
    private static final String LINE =
            "watchdog = { on = \"OUTP:PROT:WDOG:DEL {seconds};:OUTP:PROT:WDOG ON\", off = \"OUTP:PROT:WDOG OFF\" }";

    @TempDir
    Path folder;

    private static String plain() throws IOException {
        try (var stream = Dialects.class.getResourceAsStream("dialects/scpi-1999.toml")) {
            return new String(stream.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
    }

    private ScpiSupply supply(String dialect, ReplayLine line) throws IOException {
        Dialect read = Dialects.of(Files.writeString(folder.resolve("own.toml"), dialect));
        Dialogue dialogue = new Dialogue(
                "supply",
                line,
                new VirtualScheduler(Instant.EPOCH),
                ExchangeLog.none(),
                read.error(),
                Duration.ofSeconds(1));
        return new ScpiSupply(dialogue, Identity.of("a,b,c,d"), read, "\n", setting());
    }

    private static SupplySetting setting() {
        return new SupplySetting(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                1,
                false,
                2,
                5,
                0.1);
    }

    @Test
    void aDialectThatHasOneUsesIt() throws IOException {
        ReplayLine line = new ReplayLine("port", """
                > OUTP:PROT:WDOG:DEL 5;:OUTP:PROT:WDOG ON
                > SYST:ERR?
                < 0,"No error"
                > OUTP:PROT:WDOG OFF
                > SYST:ERR?
                < 0,"No error"
                """);
        String own = plain().replace("# " + LINE, LINE);
        assertThat(own).isNotEqualTo(plain());
        ScpiSupply supply = supply(own, line);
        assertThat(supply.hasWatchdog()).isTrue();
        supply.setWatchdog(5);
        supply.endWatchdog();
        assertThat(line.rest()).isEmpty();
    }

    @Test
    void thePlainOneHasNone() throws IOException {
        ReplayLine line = new ReplayLine("port", "");
        ScpiSupply supply = supply(plain(), line);
        assertThat(supply.hasWatchdog()).isFalse();
        supply.endWatchdog();
        assertThat(line.rest()).isEmpty();
    }
}
