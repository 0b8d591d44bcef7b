package railwitness.logger.ui.screen.widgets;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Columns where the place is narrow: some give way, but a date or a word that stays is not broken. */
class ColumnWidthsTest {
    private static final List<String> SESSION =
            List.of("Saloon amplifier supply", "0412", "2026-11-28 05:54", "complete, rehearsal", "not fit");
    private static final Graphics2D PAPER = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();

    @Test
    void noDateAndNoWordIsBrokenHoweverNarrowThePlace() {
        List<Column> columns = List.of(
                Column.words("unit"),
                Column.words("serial").givingWay(1),
                Column.words("instrument").givingWay(3),
                Column.words("state").givingWay(2),
                Column.words("verdict"));
        List<Row> rows = List.of(Row.of(SESSION.stream().map(Cell::ink).toList()));
        for (int width = 700; width > 200; width -= 10) {
            ColumnWidths widths = new ColumnWidths();
            widths.share(columns, rows, width, 12, 6, PAPER::getFontMetrics);
            for (int c : widths.kept()) {
                whole(SESSION.get(c), widths.width(c), Ink.INK.font());
            }
        }
    }

    private static void whole(String text, int width, java.awt.Font font) {
        FontMetrics metrics = PAPER.getFontMetrics(font);
        assertThat(String.join(" ", Wrapped.of(text, metrics, width)))
                .as("in " + width + " pixels")
                .isEqualTo(text);
    }

    @Test
    void theNameOfAFileMayBeBroken() {
        String file = "rehearsal-0412-2026-11-28-055424.session";
        ColumnWidths widths = new ColumnWidths();
        widths.share(
                List.of(Column.words("file"), Column.words("verdict")),
                List.of(Row.of(List.of(Cell.ink(file), Cell.ink("fit")))),
                200,
                12,
                6,
                PAPER::getFontMetrics);
        assertThat(widths.used()).isLessThanOrEqualTo(200);
    }
}
