package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.line.PseudoTerminal;

/** Five instruments that know a handful of words, a sheet of turns, input and rails: a whole plan to its findings. */
@Timeout(300)
class RunOnPlainInstrumentsTest {
    private static final String DESIGN = """
            [unit]
            name = "Wheelhouse amplifier supply"
            [converter]
            filter = "capacitor"
            [input]
            nominal_V = 12.6
            [transformer]
            primary_turns = 4
            secondary_turns = 12
            [[rail]]
            name = "plus"
            nominal_V = 37
            full_load_A = 2
            [[rail]]
            name = "minus"
            nominal_V = -37
            full_load_A = 2
            """;
    private static final String BENCH = """
            [bench]
            name = "Plain instruments"
            interval_s = 0.25
            patience_s = 8
            supply_without_protection = "small supply; a 20 A fuse stands in its lead"
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "%s"
            highest_V = 16
            highest_A = 20
            resolution_V = 0.1
            [[instrument]]
            name = "plus meter"
            kind = "meter"
            port = "%s"
            reads = "plus.voltage"
            [[instrument]]
            name = "minus meter"
            kind = "meter"
            port = "%s"
            reads = "minus.voltage"
            [[instrument]]
            name = "plus load"
            kind = "load"
            port = "%s"
            rail = "plus"
            [[instrument]]
            name = "minus load"
            kind = "load"
            port = "%s"
            rail = "minus"
            """;
    private static final String PLAN = """
            [plan]
            settle_at_most_s = 4
            average_s = 1
            [[stage]]
            kind = "power-up"
            current_limit_A = 5
            [[stage]]
            kind = "no-load"
            [[stage]]
            kind = "load-sweep"
            loads_pct = [25, 50, 100]
            [[stage]]
            kind = "line-sweep"
            inputs_V = [11.5, 12.6, 13.8]
            [[stage]]
            kind = "cross-load"
            """;

    @TempDir
    Path folder;

    @Test
    void aWholePlanEndsInFindings() throws IOException {
        if (!PseudoTerminal.available()) {
            System.out.println("skipped: this system has no pseudo-terminals");
        }
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        PlainUnit unit = new PlainUnit();
        Path session = folder.resolve("plain.session");
        try (SixWords supply = SixWords.supply(unit);
                SixWords plus = SixWords.meter(() -> unit.railVolts("plus"));
                SixWords minus = SixWords.meter(() -> -unit.railVolts("minus"));
                SixWords plusLoad = SixWords.load(unit, "plus");
                SixWords minusLoad = SixWords.load(unit, "minus")) {
            String bench = BENCH.formatted(List.of(supply, plus, minus, plusLoad, minusLoad).stream()
                    .map(SixWords::device)
                    .toArray());
            Said said = withEnterPressed(
                    "run",
                    "--design",
                    Files.writeString(folder.resolve("design.toml"), DESIGN).toString(),
                    "--bench",
                    Files.writeString(folder.resolve("bench.toml"), bench).toString(),
                    "--plan",
                    Files.writeString(folder.resolve("plan.toml"), PLAN).toString(),
                    "--out",
                    session.toString(),
                    "--acknowledge",
                    "Ann Other");

            assertThat(said.err())
                    .contains("output off")
                    .contains("supply: 'STAT:QUES:COND?' is not answered: whether it limits its current is judged from")
                    .contains("plus load: 'INP?' is not answered: its input is switched by 'OUTP ON'")
                    .doesNotContain("trip:");
            assertThat(unit.on()).isFalse();
        }
        Found found = Found.in(session);
        assertThat(found.state()).isEqualTo("complete");
        assertThat(found.figure("step-up slope", "plus")).isCloseTo(PlainUnit.RATIO, withPercentage(0.1));
        double full = found.figure("load effect as wired", "plus");
        assertThat(full).isCloseTo(2 * PlainUnit.RAIL_OHMS + PlainUnit.RATIO * 0.01 * 12.12, withPercentage(2));
    }

    /* The remote turn-on is switched by hand here: every prompt is answered by Enter. */
    private static Said withEnterPressed(String... arguments) {
        InputStream before = System.in;
        System.setIn(new InputStream() {
            @Override
            public int read() {
                return '\n';
            }

            @Override
            public int read(byte[] bytes, int from, int count) {
                bytes[from] = '\n';
                return 1;
            }
        });
        try {
            return Said.by(arguments);
        } finally {
            System.setIn(before);
        }
    }
}
