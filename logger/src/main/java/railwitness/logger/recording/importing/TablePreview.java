package railwitness.logger.recording.importing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import railwitness.logger.text.VisibleText;

/**
 * The first rows of a table as they would be taken.
 *
 * @param columns names in the first row
 * @param rows cells of the rows below, at most so many as asked for
 * @param fault what is wrong with them, in one line; empty where nothing is
 */
public record TablePreview(List<String> columns, List<List<String>> rows, String fault) {
    private static final int TRIED = 2000;

    public TablePreview {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
    }

    /**
     * Reads the first rows, takes nothing.
     *
     * @param shown so many rows are kept; some more are tried
     */
    public static TablePreview of(Path table, TableForm form, int shown) {
        List<CSVRecord> first = new ArrayList<>();
        try {
            TableFile.read(table, form, rows -> {
                for (CSVRecord row : rows) {
                    first.add(row);
                    if (first.size() > TRIED) {
                        break;
                    }
                }
                return first.size();
            });
        } catch (ImportException e) {
            return of(first, shown, e.getMessage());
        }
        return of(first, shown, fault(table, form, first));
    }

    private static TablePreview of(List<CSVRecord> first, int shown, String fault) {
        List<List<String>> rows =
                first.stream().skip(1).limit(shown).map(TablePreview::cells).toList();
        return new TablePreview(first.isEmpty() ? List.of() : cells(first.get(0)), rows, fault);
    }

    private static List<String> cells(CSVRecord row) {
        return row.stream()
                .map(cell -> VisibleText.line(cell.replace("\uFEFF", "").strip()))
                .toList();
    }

    private static String fault(Path table, TableForm form, List<CSVRecord> first) {
        try {
            TableStart start = TableStart.of(table, form);
            TableImport trial = new TableImport(table, form, start.wall(), reading -> {}, step -> {});
            trial.head(first.get(0));
            first.stream().skip(1).forEach(trial::row);
            return "";
        } catch (ImportException e) {
            return e.getMessage();
        }
    }
}
