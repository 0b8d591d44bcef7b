package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.KeyNote;
import railwitness.drivers.sheet.KeyNotes;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetException;

class BenchSheetTest {
    private static final Path DEMO = Path.of("..", "sessions-sample", "demo", "bench.toml");
    private static final String HEAD = "[bench]\nname = \"wharf\"\nsource = \"battery\"\n";

    private static BenchSheet read(String toml) {
        return Sheet.of("bench.toml", toml).read(BenchSheet::from);
    }

    private static String faults(String toml) {
        return catchThrowableOfType(SheetException.class, () -> read(toml)).getMessage();
    }

    private static String meter(String more) {
        return HEAD + "[[instrument]]\nname = \"m\"\nkind = \"meter\"\nport = \"P\"\n" + more;
    }

    @Test
    void demoBenchIsRead() {
        BenchSheet bench = BenchSheet.of(DEMO);
        assertThat(bench.instruments()).hasSize(10);
        assertThat(bench.source()).isEqualTo(Source.SUPPLY);
        assertThat(bench.interval()).isEqualTo(Duration.ofMillis(500));
        assertThat(bench.readBy())
                .containsEntry(Channel.of("input.current"), "input shunt meter")
                .containsEntry(Channel.of("plus.current"), "plus load")
                .containsEntry(Channel.of("supply.voltage"), "supply");
        assertThat(bench.instrument("input meter").orElseThrow().calibrated()).contains(LocalDate.of(2026, 5, 11));
    }

    @Test
    void portSettingsComeFromTheSheet() {
        BenchSheet bench = read(meter("reads = \"plus.voltage\"\nbaud = 115200\nparity = \"even\"\ndata_bits = 7\n"
                + "stop_bits = 2\nterminator = \"CR LF\"\n"));
        assertThat(bench.instruments().get(0).port().toString())
                .isEqualTo("PortSettings[port=P, baud=115200, dataBits=7, parity=EVEN, stopBits=2, terminator=\r\n]");
    }

    @Test
    void handReadMetersAndResistorBanksAreRead() {
        BenchSheet bench = read(HEAD + """
                [[hand_read]]
                name = "clamp meter"
                reads = "input.current"
                accuracy = { reading_pct = 2, digits = 5, resolution = 0.01, stated_as = "95 %" }
                [[resistor_bank]]
                rail = "plus"
                resistances_ohm = [36, 18, 12, 9]
                tolerance_pct = 1
                rating_W = 200
                """);
        assertThat(bench.handRead().get(0).accuracy().orElseThrow().halfWidthAt(10, 0, 23))
                .isEqualTo(0.25);
        assertThat(bench.bank("plus").orElseThrow().ohms()).containsExactly(36.0, 18.0, 12.0, 9.0);
        assertThat(bench.bank("minus")).isEmpty();
    }

    @Test
    void allFaultsOfABenchAreFoundAtOnce() {
        String faults = faults("""
                [bench]
                name = "wharf"
                mains_Hz = 400
                [[instrument]]
                name = "a"
                kind = "meter"
                port = "P"
                reads = "plus.volts"
                dialect = "latin"
                [[instrument]]
                name = "a"
                kind = "load"
                port = "P"
                rail = "plus"
                reads = "minus.current"
                wattage = 3
                """);
        assertThat(faults.lines())
                .anyMatch(line ->
                        line.startsWith("bench.toml:3: [bench] mains_Hz = 400 is not allowed: must be 45 to 65 Hz"))
                .anyMatch(line -> line.startsWith(
                        "bench.toml:8: [[instrument]] reads is not a channel: unknown quantity 'volts'"))
                .anyMatch(line -> line.startsWith(
                        "bench.toml:9: [[instrument]] dialect = \"latin\" is not allowed: must be one of"))
                .anyMatch(line -> line.startsWith("bench.toml:11: [[instrument]] name gives a a second time"))
                .anyMatch(line -> line.startsWith("bench.toml:13: [[instrument]] port gives P a second time"))
                .anyMatch(line ->
                        line.startsWith("bench.toml:15: [[instrument]] reads gives minus.current; a load on plus"))
                .anyMatch(line ->
                        line.startsWith("bench.toml:16: [[instrument]] wattage is not a key that is known here"))
                .anyMatch(line -> line.contains("gives no supply"))
                .hasSize(8);
    }

    @Test
    void shuntWithoutVoltageFunctionIsRefused() {
        assertThat(faults(meter("reads = \"input.current\"\nshunt_ohm = 0.001\n")))
                .isEqualTo("bench.toml:8: [[instrument]] reads does not fit: a shunt belongs to a meter that reads a"
                        + " current by its voltage function, and only to such a one");
    }

    @Test
    void twoReadersOfOneChannelAreRefused() {
        assertThat(faults(meter("reads = \"plus.voltage\"\n")
                        + "[[hand_read]]\nname = \"h\"\nreads = \"plus.voltage\"\n"))
                .isEqualTo("bench.toml:11: [[hand_read]] reads gives plus.voltage a second time on this bench");
    }

    @Test
    void everyKeyHasAMeaning() {
        KeyNotes notes = new KeyNotes();
        Sheet.of("bench.toml", Sheet.of(DEMO).text(), notes).read(BenchSheet::from);
        assertThat(notes.all()).extracting(KeyNote::meaning).doesNotContain("").doesNotContainNull();
        assertThat(notes.all())
                .contains(new KeyNote(
                        "[[instrument]]",
                        "shunt_ohm",
                        "number",
                        "ohm",
                        "0.000001 to 100 ohm",
                        "optional",
                        "resistance of the shunt it stands on"));
    }

    @Test
    void standbyRangeIsTakenForSmallValuesOnly() {
        ChannelAccuracy accuracy =
                BenchSheet.of(DEMO).accuracyOf(Channel.of("input.current")).orElseThrow();
        assertThat(accuracy.rangeFor(5)).isEqualTo(10);
        assertThat(accuracy.rangeFor(30)).isEqualTo(100);
        assertThat(accuracy.rangeFor(500)).isEqualTo(100);
    }

    @Test
    void halfWidthOfAShuntReadingAddsMeterAndShunt() {
        ChannelAccuracy accuracy =
                BenchSheet.of(DEMO).accuracyOf(Channel.of("input.current")).orElseThrow();
        // 20 A on 1 mohm: 0.015 % of 20 mV + 0.004 % of 0.1 V, in amperes; and 0.1 % of 20 A
        assertThat(accuracy.halfWidthAt(20, 100).orElseThrow()).isCloseTo(0.003 + 0.004 + 0.020, within(1e-12));
    }

    @Test
    void contributionsOfOneRangeShareTheirErrors() {
        ChannelAccuracy accuracy =
                BenchSheet.of(DEMO).accuracyOf(Channel.of("minus.voltage")).orElseThrow();
        var light = accuracy.contributions(-36, 100);
        var heavy = accuracy.contributions(-33, 100);
        assertThat(light)
                .extracting(c -> c.sharedAs())
                .isEqualTo(heavy.stream().map(c -> c.sharedAs()).toList());
        assertThat(light.get(0).effect()).isCloseTo(-36 * 0.00015, within(1e-12));
        assertThat(light.get(1).effect()).isCloseTo(0.004, within(1e-12));
        assertThat(light).extracting(c -> c.name()).containsExactly("gain of minus meter", "offset of minus meter");
    }

    @Test
    void channelWithoutAccuracyHasNoContributions() {
        ChannelAccuracy accuracy = read(meter("reads = \"plus.voltage\"\n"))
                .accuracyOf(new Channel("plus", Quantity.VOLTAGE))
                .orElseThrow();
        assertThat(accuracy.contributions(36, 100)).isEmpty();
        assertThat(accuracy.halfWidthAt(36, 100)).isEqualTo(OptionalDouble.empty());
    }
}
