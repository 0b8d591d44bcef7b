package railwitness.logger.ui.screen.widgets;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A row of a ruled sheet.
 *
 * @param group the caption of the rows that follow; it has one cell
 * @param live being measured: tinted, with the live mark at its left
 * @param remark under the row, as wide as the sheet; empty for none
 */
public record Row(List<Cell> cells, boolean group, boolean live, String remark) {
    public Row(List<Cell> cells, boolean group, boolean live) {
        this(cells, group, live, "");
    }

    /** The same with a remark under it, as wide as the sheet. */
    public Row remarked(String words) {
        return new Row(cells, group, live, words);
    }

    public Row {
        cells = List.copyOf(cells);
    }

    public static Row group(String caption) {
        return new Row(List.of(Cell.of(caption, Ink.MUTED)), true, false);
    }

    public static Row of(List<Cell> cells) {
        return new Row(cells, false, false);
    }

    public static Row live(List<Cell> cells) {
        return new Row(cells, false, true);
    }

    /** All that stands in it, in one line. */
    public String words() {
        return cells.stream().map(Cell::text).filter(text -> !text.isEmpty()).collect(Collectors.joining(", "))
                + (remark.isEmpty() ? "" : ", " + remark);
    }
}
