package railwitness.logger.recording.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.FigureName;

/** What a list of choices offers is what the sheet's reader takes. */
class ChoicesTest {
    @Test
    void aFigureWithACommaInItsNameIsOneChoice() {
        List<String> figures = SheetDraft.design(Sheets.demo().design()).fields().stream()
                .filter(field -> field.note().key().equals("figure"))
                .findFirst()
                .orElseThrow()
                .choices();
        assertThat(figures).contains("turns ratio, half A", "ripple").allMatch(word -> Arrays.stream(
                        FigureName.values())
                .anyMatch(name -> name.word().equals(word)));
    }
}
