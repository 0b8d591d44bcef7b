package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadmeTest {
    private final Locale before = Locale.getDefault();

    @TempDir
    Path folder;

    @AfterEach
    void locale() {
        Locale.setDefault(before);
    }

    /** Golden text: the sheet in README is what the demo prints, whatever the person's locale. */
    @Test
    void theTranscriptIsWhatTheDemoPrintsInThreeLocales() throws IOException {
        List<String> shown = transcript();
        assertThat(shown).hasSizeGreaterThan(30);
        for (String tag : List.of("en-GB", "de-DE", "ar-EG")) {
            Locale.setDefault(Locale.forLanguageTag(tag));
            Said said = Said.by(
                    "rehearse", "--out", folder.resolve(tag + ".session").toString());

            assertThat(said.exitCode()).isZero();
            assertThat(withoutItsTime(Arrays.asList(said.out().split("\n"))))
                    .as(tag)
                    .isEqualTo(withoutItsTime(shown));
        }
    }

    private static List<String> transcript() throws IOException {
        String readme = Files.readString(Path.of("../README.md"));
        int from = readme.indexOf("```\nFINDINGS") + 4;
        return Arrays.asList(
                readme.substring(from, readme.indexOf("\n```", from)).split("\n"));
    }

    private static List<String> withoutItsTime(List<String> lines) {
        return lines.stream().filter(line -> !line.startsWith("Session ")).toList();
    }
}
