package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.fixture.CabinSheet;
import railwitness.logger.recording.sheet.SheetRemark;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.sheet.SheetsCheck;

/** What sheets say that cannot be is refused by check and by rehearse alike; what is predicted is printed. */
class CheckCommandTest {
    private static final String DEMO = "../sessions-sample/demo/";
    private static final String BENCH = DEMO + "bench.toml";

    /** Turns, input, kind of filter and rails: all that is needed. */
    private static final String LEAST = CabinSheet.with("""
            [[rail]]
            name = "minus"
            nominal_V = -22
            """);

    private static final String PLAN = """
            [plan]
            settle_at_most_s = 8
            average_s = 5
            [[stage]]
            kind = "power-up"
            current_limit_A = 3
            [[stage]]
            kind = "no-load"
            """;

    @TempDir
    Path folder;

    private String file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private Said rehearse(String design, String plan) {
        return Said.by(
                "rehearse",
                "--design",
                design,
                "--plan",
                plan,
                "--out",
                folder.resolve("one.session").toString());
    }

    @Test
    void theSheetOfANewUnitSaysNothingThatCannotBe() {
        Sheets demo = Sheets.demo();
        assertThat(SheetsCheck.of(new Sheets(Sheets.newDesign(), demo.bench(), demo.plan())))
                .noneMatch(SheetRemark::refuses);
        assertThat(SheetsCheck.of(demo)).isEmpty();
    }

    @Test
    void theLeastSheetIsInOrderAndPredictsNoMoreThanTheUnloadedRails() throws IOException {
        Said said = Said.by("check", file("least.toml", LEAST), BENCH, file("plan.toml", PLAN));

        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(said.out())
                .contains("design sheet, in order", "plan, in order", "plus 24.0 V", "minus -24.0 V", "idle current")
                .doesNotContain("efficiency")
                .doesNotContain("0.00 A")
                .doesNotContain("input 0 A");
    }

    @Test
    void theLeastSheetIsRehearsedOnAUnitOfItsOwnTurns() throws IOException {
        Said said = rehearse(file("least.toml", LEAST), file("plan.toml", PLAN));

        assertThat(said.exitCode()).as(said.err()).isZero();
        Found found = Found.in(folder.resolve("one.session"));
        assertThat(found.state()).isEqualTo("complete");
        assertThat(found.point("no-load", "0 %").at("/rails/plus/voltage/value").asDouble())
                .isCloseTo(24, within(1.0));
        assertThat(said.out()).doesNotContain("probable");
    }

    @Test
    void withoutTurnsTheRehearsalsUnitFitsTheRails() throws IOException {
        String sheet = LEAST.replaceAll("(?s)\\[transformer\\].*?(?=\\[\\[rail)", "");
        Said said = rehearse(file("noturns.toml", sheet), file("plan.toml", PLAN));

        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(Found.in(folder.resolve("one.session"))
                        .point("no-load", "0 %")
                        .at("/rails/plus/voltage/value")
                        .asDouble())
                .isBetween(22.0, 27.0);
    }

    @Test
    void railsWithTurnsOfTheirOwnAreRehearsedEachAtItsOwnVoltage() throws IOException {
        String sheet = LEAST.replace("nominal_V = 22\n", "nominal_V = 22\nfull_load_A = 2\n")
                .replace("nominal_V = -22\n", "nominal_V = -11\nsecondary_turns = 5\nfull_load_A = 2\n");
        String plan = PLAN + "[[stage]]\nkind = \"load-sweep\"\nloads_pct = [50]\n";
        Said said = rehearse(file("two.toml", sheet), file("plan.toml", plan));

        assertThat(said.exitCode()).as(said.err() + said.out()).isZero();
        Found found = Found.in(folder.resolve("one.session"));
        assertThat(found.point("no-load", "0 %").at("/rails/plus/voltage/value").asDouble())
                .isCloseTo(24, within(1.0));
        assertThat(found.point("no-load", "0 %")
                        .at("/rails/minus/voltage/value")
                        .asDouble())
                .isCloseTo(-12, within(0.8));
        // ampere turns: 1 A at a ratio of 2 and 1 A at a ratio of 1, and what the unit itself takes
        assertThat(found.point("load-sweep", "50 %").at("/input/current/value").asDouble())
                .isBetween(3.0, 3.6);
    }

    @Test
    void aRailThatHoldsItselfStandsAtItsNominal() throws IOException {
        String sheet = LEAST.replace("nominal_V = -22\n", "nominal_V = -12\nregulated = true\n");
        Said said = rehearse(file("held.toml", sheet), file("plan.toml", PLAN));

        assertThat(said.exitCode()).as(said.err() + said.out()).isZero();
        assertThat(Found.in(folder.resolve("one.session"))
                        .point("no-load", "0 %")
                        .at("/rails/minus/voltage/value")
                        .asDouble())
                .isCloseTo(-12, within(0.05));
    }

    @Test
    void aLoadSweepWithoutFullLoadIsRefusedByCheckAndRehearsal() throws IOException {
        String design = file("least.toml", LEAST);
        String plan = file("plan.toml", PLAN + "[[stage]]\nkind = \"load-sweep\"\n");

        Said checked = Said.by("check", design, plan);
        assertThat(checked.exitCode()).isEqualTo(2);
        assertThat(checked.err()).contains("plan.toml:9:", "load-sweep", "full_load_A");
        Said rehearsed = rehearse(design, plan);
        assertThat(rehearsed.exitCode()).isEqualTo(2);
        assertThat(rehearsed.err()).contains("plan.toml:9:", "full_load_A");
        assertThat(folder.resolve("one.session")).doesNotExist();
    }

    @Test
    void capacitorsBelowWhatTheySeeAreRefusedInARehearsalAsInARun() throws IOException {
        String design = file("caps.toml", LEAST + "[filter]\ncapacitor_rating_V = 23\n");
        String plan = file("plan.toml", PLAN);

        assertThat(rehearse(design, plan).exitCode()).isEqualTo(2);
        Said run = Said.by(
                "run",
                "--design",
                design,
                "--bench",
                BENCH,
                "--plan",
                plan,
                "--out",
                folder.resolve("one.session").toString(),
                "--acknowledge",
                "Ann Other");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("caps.toml:17:", "23 V", "24 V");
        assertThat(folder.resolve("one.session")).doesNotExist();
    }

    @Test
    void aBatteryWithoutContactorIsRefusedInARehearsalAsInARun() throws IOException {
        String bench = file(
                "battery.toml",
                Files.readString(Path.of(BENCH)).replaceFirst("source = \"supply\"", "source = \"battery\""));
        Said said = Said.by(
                "rehearse",
                "--bench",
                bench,
                "--out",
                folder.resolve("one.session").toString());

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("no power", "battery", "contactor");
    }

    @Test
    void eachRailsBoundIsSaid() throws IOException {
        String sheet = LEAST.replace("nominal_V = -22\n", "nominal_V = -22\ncapacitor_rating_V = 25\n");
        Said said = Said.by("check", file("rails.toml", sheet));

        assertThat(said.out()).contains("plus above 27.6 V", "minus above 23.75 V (its capacitors)", "look at this");
        assertThat(said.exitCode()).isZero();
    }

    @Test
    void aDialectFileThatIsNotThereIsNamed() throws IOException {
        String bench = file(
                "bench.toml",
                Files.readString(Path.of(BENCH))
                        .replaceFirst("dialect = \"scpi-1999\"", "dialect = \"wharf-supply.toml\""));
        Said said = Said.by("check", bench);

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("bench.toml:15:", "dialect", "wharf-supply.toml", "does not exist");
    }

    @Test
    void aLoadOnARailThatTheDesignDoesNotHaveIsNamed() throws IOException {
        Said said = Said.by("check", file("one.toml", LEAST.replace("\"minus\"", "\"low\"")), BENCH);

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("bench.toml:", "minus load", "plus, low");
    }
}
