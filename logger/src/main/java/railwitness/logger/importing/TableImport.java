package railwitness.logger.importing;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import railwitness.drivers.reading.Measured;
import railwitness.logger.store.SessionWriter;

/**
 * Takes a table of readings into a session, row by row, so that its length does not matter. Columns are {@code time_s},
 * {@code stage}, {@code step} and one for each channel; a point is what shares stage and step, and its rows stand
 * together.
 */
public final class TableImport {
    private final Path file;
    private final SessionWriter writer;
    private final ImportedSteps steps;
    private final Set<List<String>> seen = new HashSet<>();
    private final List<Column> columns = new ArrayList<>();
    private int timeAt = -1;
    private int stageAt = -1;
    private int stepAt = -1;
    private double lastSeconds = Double.NEGATIVE_INFINITY;
    private List<String> lastStep = List.of();

    private record Column(int at, String header, ColumnName name) {}

    private TableImport(Path file, SessionWriter writer) {
        this.file = file;
        this.writer = writer;
        this.steps = new ImportedSteps(writer);
    }

    /**
     * Reads the whole table into the writer.
     *
     * @return how many readings were taken
     * @throws ImportException with row and column of the first fault; the session is then not to be kept
     */
    public static long into(SessionWriter writer, Path file) {
        TableImport table = new TableImport(file, writer);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8);
                CSVParser parser = format.parse(reader)) {
            return table.read(parser);
        } catch (CharacterCodingException e) {
            throw new ImportException(file + ": is not UTF-8 text; save it as CSV in UTF-8");
        } catch (CSVException e) {
            throw new ImportException(file + ": is not CSV: " + e.getMessage());
        } catch (IOException e) {
            throw new ImportException(file + ": cannot be read; is the name right, and may you read it?");
        }
    }

    private long read(CSVParser parser) {
        long readings = 0;
        boolean headed = false;
        try {
            for (CSVRecord row : parser) {
                if (headed) {
                    readings += row(row);
                } else {
                    header(row);
                    headed = true;
                }
            }
        } catch (java.io.UncheckedIOException e) {
            throw new ImportException(file + ": row " + (parser.getRecordNumber() + 1) + " is not CSV: "
                    + e.getCause().getMessage());
        }
        if (readings == 0) {
            throw new ImportException(
                    file + ": holds no readings; the first row names the columns, the others hold numbers");
        }
        steps.end();
        return readings;
    }

    private void header(CSVRecord row) {
        Set<String> names = new HashSet<>();
        for (int i = 0; i < row.size(); i++) {
            String header = i == 0 ? row.get(i).replace("\uFEFF", "") : row.get(i);
            if (!names.add(header)) {
                throw new ImportException(file + ": column '" + header + "' stands there twice; keep one of them");
            }
            switch (header) {
                case "time_s" -> timeAt = i;
                case "stage" -> stageAt = i;
                case "step" -> stepAt = i;
                default -> column(i, header);
            }
        }
        require(timeAt, "time_s");
        require(stageAt, "stage");
        require(stepAt, "step");
        if (columns.isEmpty()) {
            throw new ImportException(file + ": has no column of readings, such as input.voltage_V or plus.current_A");
        }
    }

    private void column(int at, String header) {
        try {
            Optional<ColumnName> name = ColumnName.of(header);
            columns.add(new Column(
                    at,
                    header,
                    name.orElseThrow(() -> new IllegalArgumentException(
                            "columns are time_s, stage, step and <node>.<what>_<unit>, such as plus.voltage_V"))));
        } catch (IllegalArgumentException e) {
            throw new ImportException(file + ": column '" + header + "': " + e.getMessage());
        }
    }

    private void require(int at, String name) {
        if (at < 0) {
            throw new ImportException(file + ": column '" + name + "' is missing");
        }
    }

    private int row(CSVRecord row) {
        double seconds = number(row, timeAt, "time_s").orElseThrow(() -> fault(row, "time_s", "is empty"));
        if (seconds < lastSeconds) {
            throw fault(
                    row, "time_s", seconds + " lies before the row above, " + lastSeconds + "; sort the rows by time");
        }
        List<String> step = List.of(cell(row, stageAt, "stage"), cell(row, stepAt, "step"));
        if (!step.equals(lastStep)) {
            begin(row, step, seconds);
        }
        lastSeconds = seconds;
        long nanos = Math.round(seconds * 1e9);
        int readings = 0;
        for (Column column : columns) {
            Optional<Double> value = number(row, column.at(), column.header());
            if (value.isPresent()) {
                double si = value.get() * column.name().factor();
                writer.reading(new Measured(column.name().channel(), si, nanos, nanos));
                readings++;
            }
        }
        steps.at(nanos);
        return readings;
    }

    private void begin(CSVRecord row, List<String> step, double seconds) {
        if (!ImportedSteps.STAGES.contains(step.get(0))) {
            throw fault(
                    row, "stage", "'" + step.get(0) + "' must be one of " + String.join(", ", ImportedSteps.STAGES));
        }
        if (step.get(1).isEmpty()) {
            throw fault(row, "step", "is empty; name the step, such as 50 %");
        }
        if (!seen.add(step)) {
            throw fault(
                    row,
                    "step",
                    "'" + step.get(1) + "' comes again after other steps; give the repeat a name of its own, such as '"
                            + step.get(1) + " again'");
        }
        if (!lastStep.isEmpty() && seconds == lastSeconds) {
            throw fault(row, "time_s", "a new step must begin later than the row above");
        }
        lastStep = step;
        steps.begin(step.get(0), step.get(1), Math.round(seconds * 1e9));
    }

    private String cell(CSVRecord row, int at, String column) {
        if (at >= row.size()) {
            throw fault(row, column, "is not there: the row has only " + row.size() + " cells");
        }
        return row.get(at);
    }

    private Optional<Double> number(CSVRecord row, int at, String column) {
        String text = cell(row, at, column);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value) && text.matches("[-+0-9.eE]+")) {
                return Optional.of(value);
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw fault(row, column, "'" + text + "' is not a number with a decimal point");
    }

    private ImportException fault(CSVRecord row, String column, String what) {
        return new ImportException(file + ": row " + row.getRecordNumber() + ", column " + column + ": " + what);
    }
}
