package railwitness.logger.ui.screen.widgets;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Type;

/**
 * Where everything stands on a ruled sheet, worked out from what stands on it. Where the place is narrow, gaps close first,
 * then words go on in further lines, then columns give way by their rank; what they hold stands under the row that is
 * selected or live. A number is never broken: rather the sheet becomes wider than its place.
 */
final class SheetGeometry {
    private static final int ROW = 31;
    private static final int GROUP = 20;
    private static final int GROUP_GAP = 12;
    private static final int INSET = 10;
    private static final int BETWEEN = 14;
    private static final int CLOSE = 8;
    private static final int PADDING = 10;

    private final ColumnWidths columns = new ColumnWidths();
    private List<Column> all = List.of();
    private int[] lefts = {};
    private int[] tops = {};
    private int[] heights = {};
    private int headHeight;
    private int headLines;
    private int width;
    private boolean known;
    private int measuredFor;
    private int measuredRow;
    private int opened = -1;

    /** Everything is to be measured anew. */
    void forget() {
        known = false;
    }

    /** Whether columns have given way. */
    boolean narrowed() {
        return columns.kept().size() < all.size();
    }

    /** Whether this row needs no wider columns and no more lines than there are. */
    boolean fits(Row row, int index, Function<Font, FontMetrics> metricsOf) {
        if (!known || row.group() || index >= heights.length || row.cells().size() > all.size()) {
            return false;
        }
        for (int c = 0; c < row.cells().size(); c++) {
            if (columns.outgrown(c, row.cells().get(c), all.get(c), metricsOf)) {
                return false;
            }
        }
        return height(row, index == opened, metricsOf) == heights[index];
    }

    /** @param selected the row that also tells what has no column here */
    void measure(
            List<Column> wanted, List<Row> rows, int selected, int available, Function<Font, FontMetrics> metricsOf) {
        if (known && available == measuredFor && Look.px(ROW) == measuredRow) {
            return;
        }
        known = true;
        all = wanted;
        measuredFor = available;
        measuredRow = Look.px(ROW);
        opened = selected;
        int inside = Math.max(available, 1) - 2 * Look.px(INSET);
        columns.share(wanted, rows, inside, Look.px(BETWEEN), Look.px(CLOSE), metricsOf);
        width = Math.max(Math.max(available, 1), columns.narrowest() + 2 * Look.px(INSET));
        place(Math.max(inside, columns.narrowest()));
        head(metricsOf.apply(Type.CAPTION.font()));
        stack(rows, metricsOf);
    }

    /** What is left over goes between the columns. */
    private void place(int inside) {
        List<Integer> kept = columns.kept();
        boolean openEnd = !kept.isEmpty() && !all.get(kept.get(kept.size() - 1)).right();
        int gaps = Math.max(1, openEnd ? kept.size() : kept.size() - 1);
        int spare = Math.max(0, inside - columns.used());
        lefts = new int[all.size()];
        int x = Look.px(INSET);
        for (int c : kept) {
            lefts[c] = x;
            x += columns.width(c) + columns.gap() + spare / gaps;
        }
    }

    private void head(FontMetrics caption) {
        headLines = columns.kept().stream()
                .mapToInt(c -> head(c, caption).size())
                .max()
                .orElse(1);
        headHeight = headLines * caption.getHeight() + Look.px(10);
    }

    /** The lines of a column's head. */
    List<String> head(int column, FontMetrics caption) {
        List<String> lines = new ArrayList<>();
        all.get(column).head().forEach(line -> lines.addAll(Wrapped.of(line, caption, columns.width(column))));
        return lines;
    }

    private void stack(List<Row> rows, Function<Font, FontMetrics> metricsOf) {
        tops = new int[rows.size()];
        heights = new int[rows.size()];
        int y = 0;
        for (int r = 0; r < tops.length; r++) {
            tops[r] = y;
            heights[r] = height(rows.get(r), r == opened, metricsOf);
            y += heights[r];
        }
    }

    private int height(Row row, boolean selected, Function<Font, FontMetrics> metricsOf) {
        FontMetrics caption = metricsOf.apply(Type.CAPTION.font());
        if (row.group()) {
            int lines = Wrapped.of(row.cells().get(0).text(), caption, inside()).size();
            return Look.px(GROUP + GROUP_GAP) + (lines - 1) * caption.getHeight();
        }
        int high = Look.px(ROW);
        for (int c : columns.kept()) {
            if (c < row.cells().size() && row.cells().get(c).drawing().isEmpty()) {
                Cell cell = row.cells().get(c);
                FontMetrics metrics = metricsOf.apply(cell.ink().font());
                int lines = lines(cell, c, metrics).size();
                high = Math.max(high, lines == 1 ? 0 : lines * metrics.getHeight() + Look.px(PADDING));
            }
        }
        return high + caption.getHeight() * more(row, selected, caption).size();
    }

    /** The lines of a cell; a number has one. */
    List<String> lines(Cell cell, int column, FontMetrics metrics) {
        return all.get(column).right() && !cell.text().contains(" ")
                ? List.of(cell.text())
                : Wrapped.of(cell.text(), metrics, columns.width(column));
    }

    /** A row's remark, and what of it has no column here where it is selected or live. */
    List<String> more(Row row, boolean selected, FontMetrics caption) {
        List<String> lines =
                new ArrayList<>(row.remark().isEmpty() ? List.of() : Wrapped.of(row.remark(), caption, inside()));
        if (!selected && !row.live() || !narrowed()) {
            return lines;
        }
        List<String> told = new ArrayList<>();
        for (int c = 0; c < row.cells().size() && c < all.size(); c++) {
            boolean empty = row.cells().get(c).text().isEmpty();
            if (!columns.kept().contains(c)
                    && !empty
                    && row.cells().get(c).drawing().isEmpty()) {
                told.add(all.get(c).title() + " " + row.cells().get(c).text());
            }
        }
        if (!told.isEmpty()) {
            lines.addAll(Wrapped.of(String.join(" \u00b7 ", told), caption, inside()));
        }
        return lines;
    }

    private int inside() {
        return width - 2 * Look.px(INSET);
    }

    /** How much of a column is kept for what stands beside its numbers. */
    int aside(int column) {
        return columns.aside(column);
    }

    /** The columns that have their place, in order. */
    List<Integer> kept() {
        return columns.kept();
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

    /** As wide as everything likes to be. */
    int naturalWidth() {
        return columns.natural() + 2 * Look.px(INSET);
    }

    /** Narrower than this no number has its place. */
    int narrowest() {
        return columns.narrowest() + 2 * Look.px(INSET);
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
        return new Rectangle(lefts[index], 0, columns.width(index), headHeight);
    }

    Rectangle place(int row, int column, int below) {
        return new Rectangle(lefts[column], tops[row], columns.width(column), heights[row] - below);
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
