package railwitness.logger.recording.importing;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Iterator;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.csv.CSVRecord;

/**
 * What the first rows say of the whole.
 *
 * @param wall the wall clock at zero of the table's time axis; empty where there is no column {@code time}
 * @param rehearsal whether the readings are said to come from a virtual bench
 */
public record TableStart(Optional<Instant> wall, boolean rehearsal) {
    /** @throws ImportException as {@link TableImport#into} */
    public static TableStart of(Path file, TableForm form) {
        return TableFile.read(file, form, rows -> {
            Iterator<CSVRecord> all = rows.iterator();
            if (!all.hasNext()) {
                throw new ImportException(
                        file + ": holds no readings; the first row names the columns, the others hold numbers");
            }
            Columns columns = new Columns(file, form, all.next());
            return all.hasNext()
                    ? of(columns, new Cells(file, form), all.next(), form)
                    : new TableStart(Optional.empty(), false);
        });
    }

    private static TableStart of(Columns columns, Cells cells, CSVRecord row, TableForm form) {
        OptionalInt rehearsal = columns.at("rehearsal");
        boolean said = rehearsal.isPresent()
                && cells.yes(row, cells.text(row, rehearsal.getAsInt(), "rehearsal"), "rehearsal");
        OptionalInt time = columns.at("time");
        if (time.isEmpty()) {
            return new TableStart(Optional.empty(), said);
        }
        Instant first = cells.instant(row, cells.text(row, time.getAsInt(), "time"), "time");
        if (form.instants()) {
            return new TableStart(Optional.of(first), said);
        }
        int seconds = columns.at("time_s").orElseThrow();
        long nanos = cells.nanos(row, cells.text(row, seconds, "time_s"), "time_s");
        return new TableStart(Optional.of(first.minusNanos(nanos)), said);
    }
}
