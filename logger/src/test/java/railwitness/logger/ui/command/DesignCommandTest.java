package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The toroid of the sample, as it is printed; what a sheet leaves out; what cannot be. */
class DesignCommandTest {
    private static final Path SAMPLE = Path.of("../sessions-sample/toroid");
    private static final String SHEET = SAMPLE.resolve("design.toml").toString();

    private static final String LEAST = """
            [unit]
            name = "Cabin amplifier supply"
            [converter]
            filter = "capacitor"
            [input]
            nominal_V = 12
            %s
            [[rail]]
            name = "plus"
            nominal_V = 22
            """;

    private static final String TURNS = """
            [transformer]
            primary_turns = 5
            secondary_turns = 10
            """;

    @TempDir
    Path folder;

    private Said design(String more, String... options) throws IOException {
        Path file = Files.writeString(folder.resolve("least.toml"), String.format(Locale.ROOT, LEAST, more));
        String[] arguments = new String[options.length + 2];
        arguments[0] = "design";
        arguments[1] = file.toString();
        System.arraycopy(options, 0, arguments, 2, options.length);
        return Said.by(arguments);
    }

    /** To write them anew after a change that is meant: {@code -Dwrite.docs}. */
    private static void golden(String name, String... arguments) throws IOException {
        Said said = Said.by(arguments);
        assertThat(said.exitCode()).as(said.err()).isZero();
        if (System.getProperty("write.docs") != null) {
            Files.writeString(SAMPLE.resolve(name), said.out());
        }
        assertThat(said.out().replace("\r\n", "\n"))
                .isEqualToNormalizingNewlines(Files.readString(SAMPLE.resolve(name)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG", "en-US"})
    void theSampleIsPrintedAsItStandsInEveryLanguage(String language) throws IOException {
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag(language));
        try {
            golden("design.txt", "design", SHEET);
            golden("design.json", "design", SHEET, "--json");
            golden("proposal.txt", "design", SHEET, "--propose");
        } finally {
            Locale.setDefault(before);
        }
    }

    /** By hand: 14.4 V x 0.45 / (2 x 25 kHz x 4 x 200 mm^2) = 0.162 T; 4 of 0.05 m rounds of 15 x 0.7 mm; 12 / 4. */
    @Test
    void theNumbersOfTheSampleByHand() {
        JsonNode json = Said.by("design", SHEET, "--json").json();
        assertThat(value(json, "flux density")).isCloseTo(0.162, within(1e-9));
        assertThat(value(json, "turns ratio")).isEqualTo(3);
        assertThat(value(json, "switch voltage without spike")).isCloseTo(28.8, within(1e-9));
        double copper = 15 * Math.PI / 4 * 0.7e-3 * 0.7e-3;
        assertThat(value(json, "resistance at 20 degC, primary half"))
                .isBetween(1e3 * 1.7241e-8 * 4 * 0.060 / copper, 1e3 * 1.7241e-8 * 4 * 0.080 / copper);
    }

    private static double value(JsonNode json, String name) {
        for (JsonNode line : json.get("lines")) {
            if (line.get("name").asText().equals(name)) {
                return line.get("value").asDouble();
            }
        }
        throw new AssertionError(name + " is not there");
    }

    /** The line that limits stands between two rules after all others, and in the sentence on top. */
    @Test
    void theLimitingLineIsLastAndNamedOnTop() {
        List<String> lines = Said.by("design", SHEET).out().lines().toList();
        int rule = lines.indexOf(lines.stream()
                .filter(line -> line.startsWith("----"))
                .findFirst()
                .orElseThrow());
        assertThat(lines.get(rule + 2)).isEqualTo(lines.get(rule));
        String name = lines.get(rule + 1).split("  ")[0];
        assertThat(lines).anyMatch(line -> line.startsWith("Every line keeps its limit. What limits: " + name));
        assertThat(lines.get(rule + 3)).isEmpty();
    }

    @Test
    void aSheetOfTurnsAloneSaysWhatIsMissingAndWhatItCosts() throws IOException {
        Said said = design(TURNS);
        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(said.out())
                .contains("[converter] frequency_Hz: 25000 Hz taken (common practice, no source)")
                .contains("[core] outer_mm, inner_mm and height_mm: no flux density; no inductance")
                .doesNotContain("NaN")
                .doesNotContain("window fill  ");
    }

    /** 10 x 2 V x 0.5 / ... : a core far too small is said to be so, and the flux density is named. */
    @Test
    void aCoreTooSmallIsNotToBeWound() throws IOException {
        Said said = design(TURNS + """
                [core]
                outer_mm = 16
                inner_mm = 10
                height_mm = 5
                """);
        assertThat(said.out()).contains("Not to be wound so: flux density");
    }

    @Test
    void whatCannotBeIsOneLineThatSaysWhatToDo() throws IOException {
        refused(design(""), "primary_turns and secondary_turns are missing");
        refused(design(TURNS, "--propose"), "full_load_A is missing");
        refused(design(TURNS + "[core]\nouter_mm = 50\ninner_mm = 30\n"), "height_mm is missing");
        refused(
                design(TURNS + "[core]\nouter_mm = 30\ninner_mm = 50\nheight_mm = 9\n"),
                "inner_mm must be below outer_mm");
        refused(design(TURNS + "[winding]\nprimary_mm = 0.7\nprimary_awg = 20\n"), "keep one of them");
        refused(design(TURNS + "[winding]\nprimary_awg = 99\n"), "primary_awg");
        refused(design(TURNS + "[core]\nmaterial = \"cheese\"\n"), "low-loss power ferrite");
        refused(design(TURNS + "[core]\nloss_k = 40\n"), "all three or none");
        refused(
                design(TURNS + "[winding]\nambient_degC = 100\ninsulation_class = \"A\"\nprimary_strand = 2\n"),
                "did you mean");
        refused(Said.by("design", folder.resolve("none.toml").toString()), "none.toml");
    }

    private static void refused(Said said, String words) {
        assertThat(said.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(said.err()).contains(words).hasLineCount(1);
        assertThat(said.out()).isEmpty();
    }

    /** Every proposed choice that is not marked keeps its limits; the ring of the sample is among the rings. */
    @Test
    void proposalsOnTheOwnCoreAndOnRings() {
        JsonNode json = Said.by("design", SHEET, "--propose", "--json").json();
        assertThat(json.get("this_core").size()).isGreaterThan(3);
        json.get("this_core").forEach(choice -> {
            boolean all = true;
            for (JsonNode line : choice.get("lines")) {
                all &= line.get("holds").asBoolean();
            }
            assertThat(choice.get("holds").asBoolean()).isEqualTo(all);
        });
        assertThat(json.get("ring_cores").size()).isEqualTo(11);
    }

    /** AWG 20 is 0.812 mm (ASTM B258): the two ways to give a wire lead to the same sheet. */
    @Test
    void wireByGaugeOrByThickness() throws IOException {
        String core = TURNS + "[core]\nouter_mm = 50\ninner_mm = 30\nheight_mm = 20\n[winding]\n";
        double gauge = value(
                design(core + "primary_awg = 20\nprimary_strands = 8\n", "--json")
                        .json(),
                "resistance at 20 degC, primary half");
        double metric = value(
                design(core + "primary_mm = 0.812\nprimary_strands = 8\n", "--json")
                        .json(),
                "resistance at 20 degC, primary half");
        assertThat(gauge).isCloseTo(metric, within(metric * 0.002));
    }

    /** A rail with turns of its own has its own ratio and takes room: 5 to 3 turns step down (common practice, no source). */
    @Test
    void aRailWithTurnsOfItsOwnHasItsOwnRatio() throws IOException {
        String core = "[core]\nouter_mm = 50\ninner_mm = 30\nheight_mm = 20\n[winding]\nsecondary_mm = 0.7\n";
        JsonNode without = design(TURNS + core, "--json").json();
        JsonNode with = design(
                        TURNS + core + "[[rail]]\nname = \"logic\"\nnominal_V = 7\nsecondary_turns = 3\n", "--json")
                .json();

        assertThat(line(with, "turns ratio, logic").get("value").asDouble()).isCloseTo(0.6, within(1e-9));
        assertThat(line(with, "turns ratio").get("value").asDouble()).isCloseTo(2.0, within(1e-9));
        assertThat(line(with, "window fill").get("value").asDouble())
                .isGreaterThan(line(without, "window fill").get("value").asDouble());
    }

    private static JsonNode line(JsonNode design, String name) {
        for (JsonNode line : design.findParents("name")) {
            if (line.get("name").asText().equals(name)) {
                return line;
            }
        }
        throw new AssertionError("no line " + name + " in " + design);
    }
}
