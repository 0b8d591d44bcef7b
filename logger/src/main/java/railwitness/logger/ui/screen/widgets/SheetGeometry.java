package railwitness.logger.ui.screen.widgets;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Rectangle;
import java.util.List;
import java.util.function.Function;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Type;

/** Where everything stands on a ruled sheet, worked out from what stands on it. */
final class SheetGeometry {
    private static final int ROW = 31;
    private static final int GROUP = 20;
    private static final int GROUP_GAP = 12;
    private static final int INSET = 10;
    private static final int BETWEEN = 14;

    private int[] widths = {};
    private int[] natural = {};
    private int[] lefts = {};
    private int[] tops = {};
    private int[] heights = {};
    private int headHeight;
    private int headLines;
    private int leastWidth;
    private int width;
    private boolean known;
    private int measuredFor;
    private int measuredRow;

    /** Everything is to be measured anew. */
    void forget() {
        known = false;
    }

    /** Whether this row needs no wider columns than there are. */
    boolean fits(Row row, Function<Font, FontMetrics> metricsOf) {
        if (!known || row.group() || row.cells().size() > natural.length) {
            return false;
        }
        for (int c = 0; c < row.cells().size(); c++) {
            Cell cell = row.cells().get(c);
            if (cell.drawing().isEmpty()
                    && metricsOf.apply(cell.ink().font()).stringWidth(cell.text()) + 2 > natural[c]) {
                return false;
            }
        }
        return true;
    }

    void measure(List<Column> columns, List<Row> rows, int available, Function<Font, FontMetrics> metricsOf) {
        if (known && available == measuredFor && Look.px(ROW) == measuredRow) {
            return;
        }
        known = true;
        measuredFor = available;
        measuredRow = Look.px(ROW);
        FontMetrics caption = metricsOf.apply(Type.CAPTION.font());
        headLines = columns.stream().mapToInt(c -> c.head().size()).max().orElse(1);
        headHeight = headLines * caption.getHeight() + Look.px(10);
        naturalWidths(columns, rows, caption, metricsOf);
        width = Math.max(available, 1);
        natural = widths.clone();
        share(
                width - 2 * Look.px(INSET),
                !columns.isEmpty() && !columns.get(columns.size() - 1).right());
        stack(rows);
    }

    private void naturalWidths(
            List<Column> columns, List<Row> rows, FontMetrics caption, Function<Font, FontMetrics> metricsOf) {
        widths = new int[columns.size()];
        for (int c = 0; c < widths.length; c++) {
            widths[c] = Look.px(columns.get(c).leastWidth());
            for (String line : columns.get(c).head()) {
                widths[c] = Math.max(widths[c], caption.stringWidth(line));
            }
        }
        FontMetrics[] inks = new FontMetrics[Ink.values().length];
        for (Ink ink : Ink.values()) {
            inks[ink.ordinal()] = metricsOf.apply(ink.font());
        }
        for (Row row : rows) {
            for (int c = 0; c < widths.length && !row.group() && c < row.cells().size(); c++) {
                Cell cell = row.cells().get(c);
                if (cell.drawing().isEmpty()) {
                    widths[c] = Math.max(widths[c], inks[cell.ink().ordinal()].stringWidth(cell.text()) + 2);
                }
            }
        }
        leastWidth = Look.px(BETWEEN) * Math.max(0, widths.length - 1) + 2 * Look.px(INSET);
        for (int one : widths) {
            leastWidth += one;
        }
    }

    /** What is left over goes between the columns; what is lacking is taken from the widest. */
    private void share(int available, boolean openEnd) {
        int gaps = Math.max(1, openEnd ? widths.length : widths.length - 1);
        int gap = Look.px(BETWEEN);
        int needed = leastWidth - 2 * Look.px(INSET);
        int lacking = needed - available;
        while (lacking > 0 && widths.length > 0) {
            int widest = 0;
            for (int c = 1; c < widths.length; c++) {
                widest = widths[c] > widths[widest] ? c : widest;
            }
            int cut = Math.min(lacking, Math.max(1, widths[widest] / 8));
            if (widths[widest] < Look.px(24)) {
                break;
            }
            widths[widest] -= cut;
            lacking -= cut;
        }
        int spare = Math.max(0, -lacking);
        lefts = new int[widths.length];
        int x = Look.px(INSET);
        for (int c = 0; c < widths.length; c++) {
            lefts[c] = x;
            x += widths[c] + gap + spare / gaps;
        }
    }

    private void stack(List<Row> rows) {
        tops = new int[rows.size()];
        heights = new int[rows.size()];
        int y = 0;
        for (int r = 0; r < tops.length; r++) {
            tops[r] = y;
            heights[r] = rows.get(r).group() ? Look.px(GROUP + GROUP_GAP) : Look.px(ROW);
            y += heights[r];
        }
    }

    static int inset() {
        return Look.px(INSET);
    }

    int headHeight() {
        return headHeight;
    }

    int headLines() {
        return headLines;
    }

    int leastWidth() {
        return leastWidth;
    }

    int rowHeight() {
        return Look.px(ROW);
    }

    int height() {
        return tops.length == 0 ? 0 : tops[tops.length - 1] + heights[heights.length - 1];
    }

    Rectangle row(int index) {
        return new Rectangle(0, tops[index], width, heights[index]);
    }

    /** Where a column's head stands; only its left edge and width count. */
    Rectangle column(int index) {
        return new Rectangle(lefts[index], 0, widths[index], headHeight);
    }

    Rectangle place(int row, int column) {
        return new Rectangle(lefts[column], tops[row], widths[column], heights[row]);
    }

    int rowAt(int y) {
        for (int r = 0; r < tops.length; r++) {
            if (y >= tops[r] && y < tops[r] + heights[r]) {
                return r;
            }
        }
        return -1;
    }
}
