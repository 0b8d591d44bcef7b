package railwitness.logger.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Columns of plain text: the first ones to the left, the others to the right. */
public final class TextTable {
    private final List<List<String>> rows = new ArrayList<>();

    public void row(List<String> cells) {
        rows.add(List.copyOf(cells));
    }

    /** A line across. */
    public void rule() {
        rows.add(List.of());
    }

    /** @param left how many columns are set to the left; a last column of words is too */
    public List<String> lines(int left) {
        int columns = rows.stream().mapToInt(List::size).max().orElse(0);
        int[] widths = new int[columns];
        for (List<String> row : rows) {
            for (int i = 0; i < row.size(); i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            lines.add(row.isEmpty() ? across(widths) : line(row, widths, left));
        }
        return lines;
    }

    private static String across(int[] widths) {
        int width = 0;
        for (int column : widths) {
            width += column + 2;
        }
        return "-".repeat(Math.max(0, width - 2));
    }

    private static String line(List<String> row, int[] widths, int left) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < row.size(); i++) {
            boolean words = i < left || !row.get(i).matches("-?[0-9.]*(e[-+][0-9]+)?") && i >= 3;
            line.append(String.format(Locale.ROOT, "%" + (words ? "-" : "") + Math.max(1, widths[i]) + "s", row.get(i)))
                    .append("  ");
        }
        return line.toString().stripTrailing();
    }
}
