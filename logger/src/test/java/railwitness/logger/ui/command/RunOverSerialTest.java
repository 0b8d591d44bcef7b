package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.fixture.ShortPlan;

/** Source of the numbers: circuit simulation (ngspice) of a reference converter, served by test instruments. */
class RunOverSerialTest {
    private static final String PLAN = ShortPlan.of(
            0.5,
            "standby",
            "power-up",
            "no-load",
            "load-sweep; loads_pct = [10, 25, 50, 75, 100]",
            "line-sweep; inputs_V = [10.5, 11, 12, 12.6, 14.4]",
            "cross-load");

    @TempDir
    Path folder;

    private Said run(TableBench bench, Path session, String... more) throws IOException {
        List<String> arguments = new ArrayList<>(List.of(
                "run",
                "--design",
                "../sessions-sample/demo/design.toml",
                "--bench",
                bench.sheet(folder.resolve("bench.toml")).toString(),
                "--plan",
                Files.writeString(folder.resolve("plan.toml"), PLAN).toString(),
                "--out",
                session.toString()));
        arguments.addAll(List.of(more));
        return Said.by(arguments.toArray(String[]::new));
    }

    @Test
    void aRunOnRealPortsGivesTheFiguresOfTheTable() throws IOException {
        ReferenceConverter table = ReferenceConverter.table();
        Path session = folder.resolve("run.session");
        try (TableBench bench = new TableBench()) {
            Said said = run(bench, session, "--acknowledge", "Ann Other");

            assertThat(said.err()).contains("output off").doesNotContain("trip:");
            assertThat(bench.unit.outputOn).isFalse();
        }
        Found found = Found.in(session);
        assertThat(found.state()).isEqualTo("complete");
        assertThat(found.point("load-sweep", "100 %").at("/efficiency/value").asDouble())
                .isCloseTo(table.of("load_100", "efficiency"), withPercentage(0.1));
        assertThat(found.figure("step-up slope", "plus")).isCloseTo(3.00276, withPercentage(0.1));
        assertThat(found.figure("output resistance as wired", "plus")).isCloseTo(0.974218, withPercentage(1));
        assertThat(found.figure("load effect as wired", "minus")).isCloseTo(4.80563, withPercentage(0.1));
        assertThat(found.figure("cross effect as wired", "plus")).isCloseTo(-1.29017, withPercentage(0.1));
        assertThat(found.figure("standby current", null)).isCloseTo(0.0002, withPercentage(0.1));
        assertThat(found.figure("ripple", "plus"))
                .isCloseTo(table.of("load_100", "ripple_pos_rms_V"), withPercentage(0.1));
    }

    /** A shunt of twice the stated value: told while the run goes on, and never believed. */
    @Test
    void aShuntThatIsNotAsStatedIsToldDuringTheRun() throws IOException {
        Path session = folder.resolve("shunt.session");
        try (TableBench bench = new TableBench(Map.of("input.current", v -> v / 2))) {
            Said said = run(bench, session, "--acknowledge", "Ann Other");

            assertThat(said.err()).contains("input meter and supply see different currents", "doubt the input meter");
            assertThat(said.out()).doesNotContain("FIT TO RETURN");
        }
        Found found = Found.in(session);
        assertThat(found.verdict()).isNotEqualTo("fit");
        assertThat(found.find("average efficiency", null)).isEmpty();
        assertThat(found.json().get("events").findValuesAsText("what")).contains("contradiction");
    }

    /** The leads of one rail's meter are reversed: off at first power, before any load, in words. */
    @Test
    void aReversedMeterEndsFirstPower() throws IOException {
        Path session = folder.resolve("reversed.session");
        try (TableBench bench = new TableBench(Map.of("minus.voltage", v -> -v))) {
            Said said = run(bench, session, "--acknowledge", "Ann Other");

            assertThat(said.err())
                    .contains("trip: the rail minus has the wrong sign", "the leads of its meter are reversed")
                    .doesNotContain("current limit set to 30");
            assertThat(said.out()).doesNotContain("FIT TO RETURN");
            assertThat(bench.unit.outputOn).isFalse();
        }
        assertThat(Found.in(session).state()).isEqualTo("tripped");
        assertThat(Found.in(session).verdict()).isNotEqualTo("fit");
    }

    @Test
    void withoutANameThereIsNoPower() throws IOException {
        Path session = folder.resolve("unnamed.session");
        try (TableBench bench = new TableBench()) {
            Said said = run(bench, session);

            assertThat(said.exitCode()).isEqualTo(2);
            assertThat(said.err()).contains("--acknowledge NAME is missing").contains("Checklist");
            assertThat(session).doesNotExist();
        }
    }

    @Test
    void aColdResistanceThatIsTooLowKeepsThePowerOff() throws IOException {
        Path session = folder.resolve("cold.session");
        try (TableBench bench = new TableBench()) {
            Said said = run(bench, session, "--acknowledge", "Ann Other", "--cold", "switch-2=0.4");

            assertThat(said.exitCode()).isEqualTo(2);
            assertThat(said.err()).contains("switch bank 2 is 0.4000 ohm", "find the cause before power");
            assertThat(bench.unit.outputOn).isFalse();
            assertThat(session).doesNotExist();
        }
    }
}
