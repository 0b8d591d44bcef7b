package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.line.PeerTerminal;
import railwitness.drivers.line.PseudoTerminal;

/** One supply and one meter on pseudo-terminals, hand-written; all else the person does and types when asked. */
@Timeout(120)
class WoundByHandTest {
    private static final String DESIGN = """
            [unit]
            name = "Galley amplifier supply"
            [converter]
            filter = "capacitor"
            [input]
            nominal_V = 13.8
            [transformer]
            primary_turns = 4
            secondary_turns = 12
            primary_resistance_ohm = 0.0011
            secondary_resistance_ohm = 0.0092
            [[rail]]
            name = "plus"
            nominal_V = 36
            [[rail]]
            name = "minus"
            nominal_V = -36
            """;
    private static final String BENCH = """
            [bench]
            name = "Table in the galley"
            interval_s = 0.1
            patience_s = 8
            supply_without_protection = "small supply behind a 10 A fuse"
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "%s"
            baud = 115200
            highest_V = 15
            highest_A = 10
            accuracy.current = { reading_pct = 0.2, offset = 0.005 }
            [[instrument]]
            name = "bench meter"
            kind = "meter"
            port = "%s"
            baud = 115200
            dialect = "scpi-1999"
            reads = "winding.voltage"
            accuracy.voltage = { reading_pct = 0.1, offset = 0.000005 }
            """;
    private static final String PLAN = """
            [[stage]]
            kind = "transformer"
            measure = [%s]
            drive = "%s"
            settle_at_most_s = 2
            average_s = 0.2
            """;

    @TempDir
    Path folder;

    /** Answers each prompt as soon as it is printed. */
    private static final class Hands extends Writer {
        private final StringBuilder line = new StringBuilder();
        private final StringWriter all = new StringWriter();
        private final BlockingQueue<String> answers = new LinkedBlockingQueue<>();
        private final PlainCoil coil;

        Hands(PlainCoil coil) {
            this.coil = coil;
        }

        @Override
        public synchronized void write(char[] letters, int from, int count) {
            all.write(letters, from, count);
            for (int i = from; i < from + count; i++) {
                if (letters[i] != '\n') {
                    line.append(letters[i]);
                } else {
                    if (line.toString().startsWith(">> ")) {
                        answers.add(coil.doAs(line.toString()));
                    }
                    line.setLength(0);
                }
            }
        }

        @Override
        public void flush() {
            // nothing is held back
        }

        @Override
        public void close() {
            // nothing to close
        }

        InputStream keyboard() {
            return new InputStream() {
                @Override
                public int read() throws IOException {
                    byte[] one = new byte[1];
                    return read(one, 0, 1) < 0 ? -1 : one[0];
                }

                private byte[] left = new byte[0];

                @Override
                public int read(byte[] bytes, int from, int count) throws IOException {
                    try {
                        if (left.length == 0) {
                            left = (answers.take() + "\n").getBytes(StandardCharsets.US_ASCII);
                        }
                    } catch (InterruptedException e) {
                        return -1;
                    }
                    int taken = Math.min(count, left.length);
                    System.arraycopy(left, 0, bytes, from, taken);
                    left = java.util.Arrays.copyOfRange(left, taken, left.length);
                    return taken;
                }
            };
        }
    }

    private JsonNode measured(PlainCoil coil, String parts, String drive) throws IOException {
        if (!PseudoTerminal.available()) {
            System.out.println("skipped: this system has no pseudo-terminals");
        }
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        Path session = folder.resolve("wound.session");
        Hands hands = new Hands(coil);
        InputStream before = System.in;
        System.setIn(hands.keyboard());
        try (PeerTerminal supply = new PeerTerminal("supply", coil.supply(), "\n");
                PeerTerminal meter = new PeerTerminal("meter", TableInstrument.meter(coil::meterVolts), "\n")) {
            StringWriter out = new StringWriter();
            int exit = Main.run(
                    new PrintWriter(out, true),
                    new PrintWriter(hands, true),
                    "run",
                    "--design",
                    Files.writeString(folder.resolve("design.toml"), DESIGN).toString(),
                    "--bench",
                    Files.writeString(folder.resolve("bench.toml"), BENCH.formatted(supply.device(), meter.device()))
                            .toString(),
                    "--plan",
                    Files.writeString(folder.resolve("plan.toml"), PLAN.formatted(parts, drive))
                            .toString(),
                    "--out",
                    session.toString(),
                    "--acknowledge",
                    "Ann Other");
            assertThat(exit).as(hands.all + out.toString()).isLessThanOrEqualTo(1);
            assertThat(hands.all.toString()).doesNotContain("trip:").contains("insulation tester");
            assertThat(coil.isOn()).isFalse();
        } finally {
            System.setIn(before);
        }
        return Said.by("findings", session.toString(), "--json").json();
    }

    private static JsonNode figure(JsonNode found, String name) {
        for (JsonNode figure : found.get("figures")) {
            if (figure.get("name").asText().equals(name)) {
                return figure;
            }
        }
        throw new AssertionError("no figure " + name + " in " + found.get("figures"));
    }

    /** Resistances by the supply's current both ways: warm joints of 25 uV cancel, 4.5 % of a primary's voltage else. */
    @Test
    void resistancesWithOneSupplyAndOneMeter() throws IOException {
        JsonNode found = measured(new PlainCoil(12), "\"resistances\"", "none");

        assertThat(found.at("/session/state").asText()).isEqualTo("complete");
        PlainCoil.OHMS_20.forEach((winding, ohms) -> {
            JsonNode figure = figure(found, winding + " resistance");
            assertThat(figure.get("value").asDouble() / ohms).as(winding).isCloseTo(1, within(0.002));
            assertThat(Math.abs(figure.get("value").asDouble() - ohms))
                    .as(winding)
                    .isLessThan(figure.get("U").asDouble());
        });
        assertThat(found.at("/transformer/windings")).hasSize(4);
        assertThat(found.get("causes")).isEmpty();
        assertThat(found.get("verdict").asText()).isEqualTo("fit");
        assertThat(found.get("not_found").toString())
                .contains("turns ratio, half A")
                .contains("generator");
    }

    /** A generator set by hand and a meter read by eye: secondary B has 11 turns, and that is said. */
    @Test
    void aHalfOneTurnShortIsFoundByNumbersTyped() throws IOException {
        JsonNode found = measured(new PlainCoil(11), "\"ratios\", \"polarity\", \"turns\"", "generator");

        assertThat(found.at("/transformer/faults/0/code").asText()).isEqualTo("mismatched-halves");
        assertThat(found.at("/transformer/faults/0/where").asText()).isEqualTo("secondary");
        assertThat(found.at("/causes/0/code").asText()).isEqualTo("mismatched-halves");
        assertThat(figure(found, "turns ratio, half B").get("value").asDouble()).isCloseTo(2.75, within(1e-3));
        assertThat(found.at("/transformer/polarity/0/as_meant").asBoolean()).isTrue();
        assertThat(found.get("verdict").asText()).isEqualTo("not fit");
    }
}
