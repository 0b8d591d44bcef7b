package railwitness.logger.ui.screen.help;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.FigureName;

/** F1 has a page for every figure and every stage, in both languages, and it is the document's text. */
class ManualTest {
    private static final List<String> OTHERS = List.of(
            "first-hour",
            "nothing-known",
            "limit",
            "reading",
            "stage-unit",
            "stage-bench",
            "stage-cautions",
            "stage-run",
            "stage-findings",
            "stage-sessions");

    @Test
    void everyFigureAndStageHasItsPageInBothLanguages() {
        for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            Manual manual = Manual.of(locale);
            for (FigureName figure : FigureName.values()) {
                assertThat(manual.page("figure-" + figure.word().replace(' ', '-')))
                        .as(locale + " " + figure.word())
                        .isPresent();
            }
            OTHERS.forEach(
                    key -> assertThat(manual.page(key)).as(locale + " " + key).isPresent());
            assertThat(manual.pages().values())
                    .allSatisfy(page -> assertThat(page.text()).hasSizeGreaterThan(60));
        }
        assertThat(Manual.of(Locale.GERMAN).pages().keySet())
                .isEqualTo(Manual.of(Locale.ENGLISH).pages().keySet());
    }

    @Test
    void thePagesAreTheDocuments() throws Exception {
        String document = Files.readString(Path.of("docs", "window.md"));
        Manual.of(Locale.ENGLISH).pages().values().forEach(page -> assertThat(document)
                .contains(page.text()));
    }
}
