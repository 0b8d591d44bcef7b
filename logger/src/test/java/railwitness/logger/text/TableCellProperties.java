package railwitness.logger.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;

class TableCellProperties {
    private static final long SEED = 8711;
    private static final String PARTS = "=+-@'\\\t\r\n\u0000\u001b\u202e\u200b\u2028 ab0\"|;,\uFF1D\u00e9\u03a9uU";

    @Test
    void everyTextComesBackAndNoneActsOrBeginsAFormula() {
        Random random = new Random(SEED);
        for (int i = 0; i < 50_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int j = random.nextInt(9); j > 0; j--) {
                text.append(
                        random.nextInt(20) == 0
                                ? Character.toString(random.nextInt(0x110000))
                                : String.valueOf(PARTS.charAt(random.nextInt(PARTS.length()))));
            }
            String cell = TableCell.of(text.toString());
            assertThat(TableCell.text(cell)).as("seed %d, case %d", SEED, i).isEqualTo(text.toString());
            assertThat(cell.strip())
                    .as("seed %d, case %d", SEED, i)
                    .doesNotMatch("(?s)[=+\\-@\uFF1D\uFF0B\uFF0D\uFF20].*");
            assertThat(cell.codePoints().noneMatch(VisibleText::acts))
                    .as("seed %d, case %d", SEED, i)
                    .isTrue();
        }
    }

    @Test
    void formulaIsHarmless() {
        assertThat(TableCell.of("=HYPERLINK(\"x\")")).isEqualTo("'=HYPERLINK(\"x\")");
        assertThat(TableCell.of(" @SUM(1)")).isEqualTo("' @SUM(1)");
        assertThat(TableCell.of("50 %")).isEqualTo("50 %");
        assertThat(TableCell.of("\u001b[2J")).isEqualTo("\\u001b[2J");
    }

    @Test
    void loneBackslashIsRefused() {
        assertThatThrownBy(() -> TableCell.text("a\\b")).hasMessageContaining("lone backslash");
    }

    @Test
    void lineShowsWhatWouldAct() {
        assertThat(VisibleText.line("a\u202eb\u001b[31m")).isEqualTo("a[U+202E]b[U+001B][31m");
    }
}
