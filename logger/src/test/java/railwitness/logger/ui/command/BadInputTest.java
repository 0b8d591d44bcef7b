package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.SerialLine;

/** Each wrong thing gets one clear line with what to do, its exit code, and nothing is lost or overwritten. */
class BadInputTest {
    private static final String DESIGN = "../sessions-sample/demo/design.toml";
    private static final String BENCH = "../sessions-sample/demo/bench.toml";
    private static final String PLAN = "../sessions-sample/demo/plan.toml";

    @TempDir
    Path folder;

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static void saysOneLine(Said said, int exitCode, String... words) {
        assertThat(said.exitCode()).as(said.err()).isEqualTo(exitCode);
        String last = Arrays.stream(said.err().split("\n")).reduce((a, b) -> b).orElse("");
        assertThat(last).contains(words).doesNotContain("Exception");
    }

    @Test
    void aWrongSheetSaysAllItsFaultsWithLines() throws IOException {
        Path sheet = file("design.toml", """
                [unit]
                name = "Galley amplifier supply"
                [converter]
                filter = "condenser"
                [input]
                nominal_V = 1380
                [[rail]]
                name = "Plus"
                nominal_V = 36
                turns = 3
                """);

        Said said = Said.by("check", sheet.toString());

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err())
                .contains("design.toml:4:", "condenser", "capacitor, choke")
                .contains("design.toml:6:", "1380")
                .contains("design.toml:8:", "Plus")
                .contains("design.toml:10:", "turns");
    }

    @Test
    void theDemosSheetsAreInOrder() {
        Said said = Said.by("check", DESIGN, BENCH, PLAN);

        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(said.out()).contains("design sheet").contains("bench sheet").contains("plan");
    }

    @Test
    void aMissingPortIsNamed() throws IOException {
        Path session = folder.resolve("none.session");

        saysOneLine(run(Path.of(BENCH), session), 3, "supply");
    }

    @Test
    void aPortInUseIsNamed() throws IOException {
        try (TableBench bench = new TableBench()) {
            Path sheet = bench.sheet(folder.resolve("bench.toml"));
            String port = Files.readAllLines(sheet).stream()
                    .filter(line -> line.startsWith("port"))
                    .findFirst()
                    .orElseThrow()
                    .replaceAll("port = \"|\"", "");
            try (SerialLine held = SerialLine.open(PortSettings.usual(port))) {
                assertThat(held.port()).isEqualTo(port);

                saysOneLine(run(sheet, folder.resolve("inuse.session")), 3, port, "in use");
            }
        }
    }

    @Test
    void aWrongInstrumentOnAPortIsNamed() throws IOException {
        try (TableBench bench = new TableBench()) {
            Path sheet = bench.sheet(folder.resolve("bench.toml"));
            String text =
                    Files.readString(sheet).replace("kind = \"supply\"\n", "kind = \"supply\"\nexpect = \"S80\"\n");
            Files.writeString(sheet, text);

            saysOneLine(run(sheet, folder.resolve("wrong.session")), 3, "supply", "S40", "S80");
        }
    }

    @Test
    void aSecondRunNeverWritesIntoTheSameFile() throws IOException {
        Path session = file("taken.session", "something of somebody's");

        saysOneLine(Said.by("rehearse", "--out", session.toString()), 4, "taken.session");
        assertThat(session).hasContent("something of somebody's");
    }

    @Test
    void anUnknownFolderIsNamed() {
        Path session = folder.resolve("nowhere/at/all.session");

        saysOneLine(Said.by("rehearse", "--out", session.toString()), 4, "nowhere");
    }

    @Test
    void aMissingSessionIsNamed() {
        saysOneLine(Said.by("findings", folder.resolve("none.session").toString()), 4, "none.session");
    }

    @Test
    void aForeignFileIsNoSession() throws IOException {
        saysOneLine(Said.by("findings", file("notes.session", "mooring fees").toString()), 4, "notes.session");
    }

    @Test
    void aTruncatedSessionIsSaidToBe() throws IOException {
        Path whole = folder.resolve("whole.session");
        Said.by("rehearse", "--out", whole.toString());
        byte[] bytes = Files.readAllBytes(whole);
        Path cut = Files.write(folder.resolve("cut.session"), Arrays.copyOf(bytes, bytes.length / 3));

        saysOneLine(Said.by("findings", cut.toString()), 4, "cut.session");
    }

    @Test
    void anUnknownFaultIsRefusedWithThoseKnown() {
        saysOneLine(
                Said.by(
                        "rehearse",
                        "--fault",
                        "gremlins",
                        "--out",
                        folder.resolve("g.session").toString()),
                2,
                "gremlins",
                "shorted-turn");
        assertThat(folder.resolve("g.session")).doesNotExist();
    }

    @Test
    void aFaultyTableNamesRowAndColumnAndLeavesNothing() throws IOException {
        Path table = file("readings.csv", """
                time_s,stage,step,input.voltage_V,input.current_A,plus.voltage_V
                0,no-load,0 %,13.8,0.37,41.7
                1,load-sweep,50 %,13.6,12 A,38.8
                """);
        Path session = folder.resolve("imported.session");

        saysOneLine(
                Said.by("import", table.toString(), "--out", session.toString()),
                2,
                "row 3",
                "input.current_A",
                "12 A");
        assertThat(session).doesNotExist();
    }

    @Test
    void anUnknownCommandPointsToHelp() {
        saysOneLine(Said.by("refit"), 2, "refit", "--help");
    }

    private Said run(Path bench, Path session) {
        return Said.by(
                "run",
                "--design",
                DESIGN,
                "--bench",
                bench.toString(),
                "--plan",
                PLAN,
                "--out",
                session.toString(),
                "--acknowledge",
                "Ann Other");
    }
}
