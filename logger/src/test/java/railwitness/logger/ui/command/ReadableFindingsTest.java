package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The text findings as a technician reads them: a paragraph first, and nothing that is off goes without a word. */
class ReadableFindingsTest {
    private static final String SUPPLIES = "../analysis/src/test/resources/railwitness/analysis/supplies/building/";
    private static final int WIDEST = 100;

    @TempDir
    Path folder;

    private String rehearsed(String fault) {
        List<String> words = new ArrayList<>(
                List.of("rehearse", "--out", folder.resolve("r.session").toString()));
        if (!fault.isEmpty()) {
            words.addAll(List.of("--fault", fault));
        }
        return Said.by(words.toArray(String[]::new)).out();
    }

    private String imported(String design, String recording) {
        return Said.by(
                        "import",
                        SUPPLIES + design + "/" + recording + ".csv",
                        "--design",
                        SUPPLIES + design + "/sheet.toml",
                        "--out",
                        folder.resolve("i.session").toString())
                .out();
    }

    private static void assertReadable(String text) {
        assertThat(text.lines())
                .isNotEmpty()
                .allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(WIDEST));
    }

    /** The paragraph in one line: the text between the first two empty lines. */
    private static String paragraph(String text) {
        return text.substring(text.indexOf("FINDINGS")).split("\n\n")[1].replaceAll("\\s+", " ");
    }

    @Test
    void aSoundUnitIsSaidToBeAsExpected() {
        String text = rehearsed("");
        assertReadable(text);
        assertThat(paragraph(text)).startsWith("Fit to return: all 12 requirements met. Nothing is off");
    }

    @ParameterizedTest
    @CsvSource({"wrong-turns", "tired-capacitor", "lead-resistance", "dead-rectifier"})
    void aFaultIsSaidInTheFirstParagraph(String fault) {
        String text = rehearsed(fault);
        assertReadable(text);
        assertThat(paragraph(text)).containsAnyOf("Off: ", "the run tripped").contains("Most likely: ");
    }

    @ParameterizedTest
    @CsvSource({
        "wharf, lead-resistance-0.03-56",
        "butty, shorted-turn-0.1-54",
        "windlass, tired-capacitor-at-minus-20-13",
        "towpath, tired-capacitor-at-plus-8-11"
    })
    void anImportedFaultIsSaidWithItsNumbers(String design, String recording) {
        String text = imported(design, recording);
        assertReadable(text);
        assertThat(paragraph(text)).containsPattern("Off: .* expected [0-9.-]+ \\+- [0-9.]+ ");
    }

    @ParameterizedTest
    @CsvSource({"wharf", "butty", "aqueduct"})
    void anImportedSoundUnitIsSaidToBeAsExpected(String design) {
        String text = imported(design, "sound-exact");
        assertReadable(text);
        assertThat(paragraph(text)).contains("Nothing is off");
    }
}
