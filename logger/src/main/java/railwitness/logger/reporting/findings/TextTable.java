package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import railwitness.logger.text.VisibleText;

/** Columns of plain text under a head: numbers to the right, words to the left, the head as its column. */
public final class TextTable {
    private static final Pattern NUMBER =
            Pattern.compile("[-+]?[0-9.]*(e[-+][0-9]+)?( \\+- [0-9.]+)?|not known|not found|inf");

    private static final int LEAST_FIRST = 12;

    /** A longer one, such as a name that somebody made against the table, would widen every row. */
    private static final int LONGEST_CELL = 300;

    private final List<List<String>> rows = new ArrayList<>();

    /** The first row is the head. */
    public void row(List<String> cells) {
        rows.add(cells.stream()
                .map(cell -> VisibleText.shortened(cell, LONGEST_CELL))
                .toList());
    }

    /** A line across. */
    public void rule() {
        rows.add(List.of());
    }

    /** @param left how many columns are set to the left whatever they hold */
    public List<String> lines(int left) {
        return lines(left, Integer.MAX_VALUE);
    }

    /**
     * The same, not wider than so many signs: what is too long in the first column goes on in a line of its own.
     *
     * @param widest at least what the other columns need and a few signs
     */
    public List<String> lines(int left, int widest) {
        int columns = rows.stream().mapToInt(List::size).max().orElse(0);
        int[] widths = new int[columns];
        boolean[] words = new boolean[columns];
        for (int i = 0; i < columns; i++) {
            int column = i;
            widths[i] = rows.stream()
                    .mapToInt(row -> cell(row, column).length())
                    .max()
                    .orElse(0);
            words[i] = i < left
                    || rows.stream().skip(1).anyMatch(row -> !NUMBER.matcher(cell(row, column))
                            .matches());
        }
        int others = Arrays.stream(widths).skip(1).map(width -> width + 2).sum();
        if (columns > 0) {
            widths[0] = Math.min(widths[0], Math.max(LEAST_FIRST, widest - others));
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            if (row.isEmpty()) {
                lines.add("-".repeat(widths[0] + others));
            } else {
                lines.addAll(folded(row, widths, words));
            }
        }
        return lines;
    }

    private static List<String> folded(List<String> row, int[] widths, boolean[] words) {
        List<String> parts = WrappedText.lines(row.get(0), widths[0], "  ");
        List<String> lines = new ArrayList<>(parts.subList(0, parts.size() - 1));
        List<String> last = new ArrayList<>(row);
        last.set(0, parts.get(parts.size() - 1));
        lines.add(line(last, widths, words));
        return lines;
    }

    private static String cell(List<String> row, int column) {
        return column < row.size() ? row.get(column) : "";
    }

    private static String line(List<String> row, int[] widths, boolean[] words) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < row.size(); i++) {
            String form = "%" + (words[i] ? "-" : "") + Math.max(1, widths[i]) + "s  ";
            line.append(String.format(Locale.ROOT, form, row.get(i)));
        }
        return line.toString().stripTrailing();
    }
}
