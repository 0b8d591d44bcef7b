package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.analysis.cause.CauseCode;

/** The page of the first hour: its sheets are written out, its commands are run in its order. */
class FirstHourTest {
    private static final Path PAGE = Path.of("docs/first-hour.md");
    private static final Pattern BLOCK = Pattern.compile("(?s)```\\n(.*?)```");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
    private static final Pattern FILE = Pattern.compile(".*\\.(toml|csv|session|pdf)");

    @TempDir
    static Path folder;

    private static final Map<String, Said> SAID = new LinkedHashMap<>();

    @BeforeAll
    static void doAllThatThePageSays() throws IOException {
        Matcher blocks = BLOCK.matcher(Files.readString(PAGE));
        while (blocks.find()) {
            String block = blocks.group(1);
            if (block.startsWith("# ")) {
                String name = block.substring(2, block.indexOf('\n'));
                boolean comment = name.endsWith(".toml");
                Files.writeString(folder.resolve(name), comment ? block : block.substring(block.indexOf('\n') + 1));
            } else {
                block.lines().forEach(line -> SAID.put(line, said(line)));
            }
        }
    }

    private static Said said(String line) {
        Matcher words = WORD.matcher(line);
        List<String> arguments = new ArrayList<>();
        while (words.find()) {
            String word = words.group(1) == null ? words.group(2) : words.group(1);
            arguments.add(FILE.matcher(word).matches() ? folder.resolve(word).toString() : word);
        }
        assertThat(arguments.remove(0)).as(line).isEqualTo("railwitness");
        return Said.by(arguments.toArray(String[]::new));
    }

    private static Said of(String beginning) {
        return SAID.entrySet().stream()
                .filter(entry -> entry.getKey().startsWith("railwitness " + beginning))
                .findFirst()
                .orElseThrow()
                .getValue();
    }

    @Test
    void everyCommandDoesItsWorkAndARunGetsAsFarAsThePort() {
        assertThat(SAID).hasSizeGreaterThanOrEqualTo(10);
        SAID.forEach((line, said) -> assertThat(said.exitCode())
                .as(line + "\n" + said.err())
                .isEqualTo(line.startsWith("railwitness run") ? ExitCode.INSTRUMENT : exitOf(line)));
        assertThat(SAID.entrySet().stream()
                        .filter(entry -> entry.getKey().contains("--fault"))
                        .map(entry -> entry.getValue().out()))
                .singleElement()
                .asString()
                .contains("Not fit to return: ", "a rectifier of the minus rail does not conduct");
        assertThat(of("run").err()).contains("Checklist", "/dev/ttyUSB0", "is its cable in?");
    }

    /** A fault is not fit; nothing else of the page fails. */
    private static int exitOf(String line) {
        return line.contains("--fault") ? ExitCode.NOT_FIT : ExitCode.DONE;
    }

    @Test
    void fiveFactsAreInOrderAndSayWhatIsNotPredicted() {
        assertThat(of("check").err()).isEmpty();
        assertThat(of("check").out())
                .contains("plus 41.4 V, minus -41.4 V", "not predicted: idle current, sag under load, losses");
    }

    @Test
    void aMeterReadByHandAndKnobsLeadToACertificate() {
        assertThat(of("import").out())
                .contains("Fit to return: all 2 requirements met.", "load effect, plus", "effective turns ratio, plus");
        assertThat(Files.exists(folder.resolve("by-hand.pdf"))).isTrue();
        assertThat(of("rehearse").out()).contains("Fit to return: all 2 requirements met.");
    }

    @Test
    void oneMeterAndKnobsLeadToACertificate() {
        assertThat(of("rehearse --design design.toml --bench bench-one-meter.toml")
                        .out())
                .contains("Fit to return: all 2 requirements met.", "ripple, plus", "step-up slope, minus");
        assertThat(of("verify one-meter.session").exitCode()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void aBenchOnABatteryIsNotRun() {
        Said said = said(
                "railwitness rehearse --design design.toml --bench bench-knobs.toml --plan plan.toml --out k.session");

        assertThat(said.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(said.err()).contains("no power");
    }

    /** The page's table of what is lost, row by row against the program. */
    @Test
    void withLessKnownLessIsJudged() throws IOException {
        String design = Files.readString(folder.resolve("design.toml"));
        assertThat(check(design.replaceAll("(?s)\\[transformer\\].*?(?=\\[\\[rail)", ""))
                        .out())
                .contains("turns: not on the sheet, so no rail is predicted");
        assertThat(check(design.replaceAll("full_load_A = .*\n", "")).err()).contains("load-sweep", "full_load_A");
        assertThat(briefing(design.replaceAll("fuse_A = .*\n", ""))).contains("The design sheet names no fuse.");
        String without = design.replaceAll("(?s)\\[\\[requirement.*", "");
        assertThat(imported(without, bench())).contains("Not judged: no requirements to judge by.");
        assertThat(imported(design, bench().replaceAll("(?s)range = 40\naccuracy = [^\n]*", "range = 40")))
                .contains("not judged: average efficiency");
        assertThat(of("import").out()).contains("not found: ripple (plus, minus): no ripple meter on this rail");
        assertThat(of("rehearse").out()).contains("read back at the supply, the leads' drop inside");
    }

    private static String bench() throws IOException {
        return Files.readString(folder.resolve("bench-knobs.toml"));
    }

    private static Said check(String design) throws IOException {
        Files.writeString(folder.resolve("less.toml"), design);
        return said("railwitness check less.toml bench.toml plan.toml");
    }

    private static String briefing(String design) throws IOException {
        Files.writeString(folder.resolve("less.toml"), design);
        return said("railwitness run --design less.toml --bench bench.toml --plan plan.toml --out no.session")
                .err();
    }

    private static String imported(String design, String bench) throws IOException {
        Files.writeString(folder.resolve("less.toml"), design);
        Files.writeString(folder.resolve("less-bench.toml"), bench);
        Files.deleteIfExists(folder.resolve("less.session"));
        return said("railwitness import readings.csv --design less.toml --bench less-bench.toml --out less.session")
                .out();
    }

    /** Each cause of the page's last table is one that findings name, with the probe that they name first. */
    @Test
    void theProbesAreThoseOfTheFindings() throws IOException {
        Map<String, String> first = new LinkedHashMap<>();
        Arrays.stream(CauseCode.values())
                .forEach(
                        code -> first.put("`" + code.word() + "`", code.checks().get(0)));
        List<String[]> rows = Files.readAllLines(PAGE).stream()
                .filter(line -> line.matches("\\| .* \\| `[a-z-]+` \\| .* \\|"))
                .map(line -> line.split(" *\\| *"))
                .toList();

        assertThat(rows).hasSizeGreaterThan(10);
        rows.forEach(row -> assertThat(row[3]).as(row[2]).isEqualTo(first.get(row[2])));
    }
}
