package railwitness.logger.ui.screen.widgets;

import java.awt.Font;
import java.awt.FontMetrics;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Type;

/** How wide the columns of a sheet are, and which of them give way. All in pixels of the screen. */
final class ColumnWidths {
    private static final int LEAST_DRAWING = 60;
    private static final int LEAST_WORDS = 64;

    /** Words and dates up to this length are never broken; names of files may be. */
    private static final int UNBROKEN_LETTERS = 16;

    private static final int BESIDE = 7;

    private int[] widths = {};
    private int[] wanted = {};
    private int[] floors = {};
    private int[] asides = {};
    private List<Integer> kept = List.of();
    private int gap;

    /** Shares the place out; afterwards every number has its width. */
    void share(
            List<Column> columns,
            List<Row> rows,
            int available,
            int usualGap,
            int closeGap,
            Function<Font, FontMetrics> metricsOf) {
        FontMetrics pencil = metricsOf.apply(Type.PENCIL_TEXT.font());
        measure(columns, rows, metricsOf);
        asides(columns, rows, pencil, available, closeGap);
        kept = new ArrayList<>(IntStream.range(0, columns.size()).boxed().toList());
        gap = closeGap;
        while (sum(floors) > available) {
            var first = kept.stream()
                    .filter(c -> columns.get(c).rank() > 0)
                    .max(Comparator.comparingInt(c -> columns.get(c).rank()));
            if (first.isEmpty()) {
                break;
            }
            kept.remove(first.get());
        }
        widths = wanted.clone();
        gap = usualGap;
        if (sum(widths) > available) {
            gap = closeGap;
            take(sum(widths) - available);
        }
    }

    private void measure(List<Column> columns, List<Row> rows, Function<Font, FontMetrics> metricsOf) {
        FontMetrics caption = metricsOf.apply(Type.CAPTION.font());
        FontMetrics[] inks = new FontMetrics[Ink.values().length];
        for (Ink ink : Ink.values()) {
            inks[ink.ordinal()] = metricsOf.apply(ink.font());
        }
        wanted = new int[columns.size()];
        floors = new int[columns.size()];
        for (int c = 0; c < wanted.length; c++) {
            Column column = columns.get(c);
            int least = Look.px(column.leastWidth());
            wanted[c] = least;
            floors[c] = Math.min(least, Look.px(column.right() ? 24 : LEAST_DRAWING));
            for (String line : column.head()) {
                wanted[c] = Math.max(wanted[c], caption.stringWidth(line));
                floors[c] = Math.max(floors[c], floor(line, false, caption));
            }
        }
        for (Row row : rows) {
            for (int c = 0; c < wanted.length && !row.group() && c < row.cells().size(); c++) {
                Cell cell = row.cells().get(c);
                if (cell.drawing().isEmpty()) {
                    FontMetrics metrics = inks[cell.ink().ordinal()];
                    wanted[c] = Math.max(wanted[c], metrics.stringWidth(cell.text()) + 2);
                    floors[c] = Math.max(
                            floors[c], floor(cell.text(), columns.get(c).right(), metrics) + 2);
                }
            }
        }
    }

    /** What is expected stands beside what was measured where all columns have room for it. */
    private void asides(List<Column> columns, List<Row> rows, FontMetrics pencil, int available, int closeGap) {
        asides = new int[columns.size()];
        int more = 0;
        for (int c = 0; c < asides.length; c++) {
            for (Row row : rows) {
                if (c < row.cells().size() && !row.cells().get(c).aside().isEmpty()) {
                    asides[c] = Math.max(
                            asides[c], pencil.stringWidth(row.cells().get(c).aside()) + Look.px(BESIDE));
                }
            }
            more += asides[c];
        }
        int all = IntStream.of(wanted).sum() + closeGap * Math.max(0, wanted.length - 1);
        if (all + more > available) {
            asides = new int[columns.size()];
            return;
        }
        for (int c = 0; c < asides.length; c++) {
            wanted[c] += asides[c];
            floors[c] += asides[c];
        }
    }

    /** How much of a column is kept for what stands beside its numbers; 0 where nothing does. */
    int aside(int column) {
        return column < asides.length ? asides[column] : 0;
    }

    private static int floor(String text, boolean number, FontMetrics metrics) {
        int longest = Wrapped.widestWord(text, Integer.MAX_VALUE, metrics);
        return number
                ? longest
                : Math.max(
                        Math.min(longest, Look.px(LEAST_WORDS)), Wrapped.widestWord(text, UNBROKEN_LETTERS, metrics));
    }

    /** What is lacking is taken from the widest of those that can give. */
    private void take(int lacking) {
        int left = lacking;
        while (left > 0) {
            var widest = kept.stream().filter(c -> widths[c] > floors[c]).max(Comparator.comparingInt(c -> widths[c]));
            if (widest.isEmpty()) {
                return;
            }
            int c = widest.get();
            int cut = Math.min(Math.min(left, Math.max(1, widths[c] / 16)), widths[c] - floors[c]);
            widths[c] -= cut;
            left -= cut;
        }
    }

    /** Whether a cell needs a wider column than it has. */
    boolean outgrown(int column, Cell cell, Column of, Function<Font, FontMetrics> metricsOf) {
        if (cell.drawing().isPresent()) {
            return false;
        }
        FontMetrics metrics = metricsOf.apply(cell.ink().font());
        boolean natural = metrics.stringWidth(cell.text()) + 2 + aside(column) <= wanted[column];
        return !natural && (!kept.contains(column) || of.right() || widths[column] >= wanted[column]);
    }

    private int sum(int[] of) {
        return kept.stream().mapToInt(c -> of[c]).sum() + gap * Math.max(0, kept.size() - 1);
    }

    int used() {
        return sum(widths);
    }

    int narrowest() {
        return sum(floors);
    }

    int natural() {
        return IntStream.of(wanted).sum() + gap * Math.max(0, wanted.length - 1);
    }

    List<Integer> kept() {
        return kept;
    }

    int width(int column) {
        return widths[column];
    }

    int gap() {
        return gap;
    }
}
