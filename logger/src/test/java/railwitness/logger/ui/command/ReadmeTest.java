package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Golden text: README shows how the demo's findings begin, a page all of them, as they are printed whatever the person's
 * locale. With {@code -Drailwitness.transcript=write} both are written anew before they are compared.
 */
class ReadmeTest {
    private static final Path README = Path.of("../README.md");
    private static final Path PAGE = Path.of("docs/findings-of-the-demo.md");
    private static final int SHOWN_LINES = 15;
    private static final String FENCE = "```\n";

    private final Locale before = Locale.getDefault();

    @TempDir
    Path folder;

    @BeforeEach
    void writtenAnewWhereAskedFor() throws IOException {
        if ("write".equals(System.getProperty("railwitness.transcript"))) {
            List<String> printed = printed("en-GB");
            replace(PAGE, printed);
            replace(README, printed.subList(0, SHOWN_LINES));
        }
    }

    @AfterEach
    void locale() {
        Locale.setDefault(before);
    }

    @Test
    void readmeAndPageShowWhatTheDemoPrintsInThreeLocales() throws IOException {
        List<String> page = withoutTime(shown(PAGE));
        List<String> readme = withoutTime(shown(README));
        assertThat(page).hasSizeGreaterThan(30);
        assertThat(readme).hasSize(SHOWN_LINES);
        for (String tag : List.of("en-GB", "de-DE", "ar-EG")) {
            List<String> printed = withoutTime(printed(tag));

            assertThat(printed).as(tag).isEqualTo(page);
            assertThat(printed.subList(0, SHOWN_LINES)).as(tag).isEqualTo(readme);
        }
    }

    private List<String> printed(String tag) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        Said said =
                Said.by("rehearse", "--out", folder.resolve(tag + ".session").toString());
        assertThat(said.exitCode()).isZero();
        folder.resolve(tag + ".session").toFile().delete();
        return Arrays.asList(said.out().split("\n"));
    }

    private static List<String> shown(Path file) throws IOException {
        String text = Files.readString(file);
        int from = start(text);
        return Arrays.asList(text.substring(from, end(text, from)).split("\n"));
    }

    private static void replace(Path file, List<String> lines) throws IOException {
        String text = Files.readString(file);
        int from = start(text);
        Files.writeString(file, text.substring(0, from) + String.join("\n", lines) + text.substring(end(text, from)));
    }

    private static int start(String text) {
        int fence = text.indexOf(FENCE + "FINDINGS");
        assertThat(fence).as("a fenced piece that begins with FINDINGS").isNotNegative();
        return fence + FENCE.length();
    }

    private static int end(String text, int from) {
        return text.indexOf("\n" + FENCE, from);
    }

    /** A session's id and the minute it began differ each time; only they are left out. */
    private static List<String> withoutTime(List<String> lines) {
        return lines.stream()
                .map(line -> line.replaceAll("\\d{8}-\\d{6}-\\d{3}", "ID")
                        .replaceAll("\\d{4}-\\d{2}-\\d{2} \\d{2}:\\d{2} UTC", "TIME"))
                .toList();
    }
}
