package railwitness.logger.recording.importing;

import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.function.LongConsumer;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.importing.Columns.Column;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StepEntry;

/**
 * Takes a table of readings into a session, row by row, so that its length does not matter. Columns are {@code time_s}
 * (or {@code time}), {@code stage}, {@code step} and one for each channel; a point is what shares stage and step, and
 * its rows stand together. Rows without stage and step are kept and belong to no point. {@code docs/tables.md} has it all.
 */
public final class TableImport {
    private static final int ROWS_BETWEEN_WORDS = 2000;
    private static final int MOST_STEPS = 1000;
    private static final List<String> NO_STEP = List.of("", "");

    private final Path file;
    private final TableForm form;
    private final Consumer<Reading> taken;
    private final Optional<Instant> wall;
    private final ImportedSteps steps;
    private final Cells cells;
    private final Set<List<String>> seen = new HashSet<>();
    private final Map<Column, String> unitOf = new HashMap<>();
    private Columns columns;
    private long lastNanos = Long.MIN_VALUE;
    private long firstNanos = Long.MIN_VALUE;
    private List<String> lastStep = NO_STEP;

    TableImport(Path file, TableForm form, Optional<Instant> wall, Consumer<Reading> taken, Consumer<StepEntry> steps) {
        this.file = file;
        this.form = form;
        this.wall = wall;
        this.taken = taken;
        this.steps = new ImportedSteps(steps);
        this.cells = new Cells(file, form);
    }

    /**
     * Reads the whole table into the writer.
     *
     * @param wall the wall clock at zero, as {@link TableStart} gives it; needed where time is written as instants
     * @return how many readings were taken
     * @throws ImportException with row and column of the first fault; the session is then not to be kept
     */
    public static long into(SessionWriter writer, Path file, TableForm form, Optional<Instant> wall) {
        return into(writer, file, form, wall, share -> {});
    }

    /**
     * The same.
     *
     * @param progress told often which share of the file is read, 0 to 1; what it throws ends the import
     */
    static long into(SessionWriter writer, Path file, TableForm form, Optional<Instant> wall, DoubleConsumer progress) {
        TableImport table = new TableImport(file, form, wall, writer::reading, writer::step);
        double length = Math.max(1, file.toFile().length());
        return TableFile.read(
                file, form, rows -> table.read(rows, character -> progress.accept(Math.min(1, character / length))));
    }

    private long read(CSVParser parser, LongConsumer read) {
        long readings = 0;
        for (CSVRecord row : parser) {
            if (row.getRecordNumber() % ROWS_BETWEEN_WORDS == 0) {
                read.accept(row.getCharacterPosition());
            }
            if (columns == null) {
                head(row);
            } else {
                readings += row(row);
            }
        }
        if (readings == 0) {
            throw new ImportException(
                    file + ": holds no readings; the first row names the columns, the others hold numbers");
        }
        steps.end();
        return readings;
    }

    /** Takes the first row, which names the columns. */
    void head(CSVRecord row) {
        columns = new Columns(file, form, row);
    }

    /** @return how many readings it holds */
    int row(CSVRecord row) {
        long nanos = time(row);
        List<String> step = List.of(name(row, "stage"), name(row, "step"));
        if (!step.equals(lastStep)) {
            if (nanos == lastNanos) {
                throw cells.fault(row, timeColumn(), "a new step must begin later than the row above");
            }
            change(row, step, nanos);
        }
        lastNanos = nanos;
        long requested = requested(row, nanos);
        int readings = 0;
        for (Column column : columns.readings()) {
            Optional<Reading> reading = reading(row, column, requested, nanos);
            reading.ifPresent(taken);
            readings += reading.isPresent() ? 1 : 0;
        }
        steps.at(nanos);
        return readings;
    }

    private String name(CSVRecord row, String column) {
        return cells.name(row, columns.at(column).orElseThrow(), column);
    }

    private String timeColumn() {
        return form.instants() ? "time" : "time_s";
    }

    private long time(CSVRecord row) {
        String column = timeColumn();
        String text = cells.text(row, columns.at(column).orElseThrow(), column);
        if (text.isEmpty()) {
            throw cells.fault(row, column, "is empty");
        }
        long nanos = form.instants()
                ? cells.nanosSince(row, wall.orElseThrow(), cells.instant(row, text, column), column)
                : cells.nanos(row, text, column);
        firstNanos = firstNanos == Long.MIN_VALUE ? nanos : firstNanos;
        cells.near(row, firstNanos, nanos, column);
        if (nanos < lastNanos) {
            throw cells.fault(row, column, Cells.shown(text) + " lies before the row above; sort the rows by time");
        }
        return nanos;
    }

    private long requested(CSVRecord row, long nanos) {
        return noLater(row, "requested_s", nanos, "a reading is asked for before it comes");
    }

    private long beginning(CSVRecord row, long nanos) {
        return noLater(row, "begin_s", nanos, "a step begins before it is averaged");
    }

    /** The time in that column; the row's own where there is none. */
    private long noLater(CSVRecord row, String column, long nanos, String why) {
        OptionalInt at = columns.at(column);
        String text = at.isPresent() ? cells.text(row, at.getAsInt(), column) : "";
        if (text.isEmpty()) {
            return nanos;
        }
        long earlier = cells.near(row, nanos, cells.nanos(row, text, column), column);
        if (earlier > nanos) {
            throw cells.fault(row, column, "lies behind time_s; " + why);
        }
        return earlier;
    }

    private Optional<Reading> reading(CSVRecord row, Column column, long requested, long nanos) {
        String text = cells.text(row, column.at(), column.header());
        Channel channel = column.name().channel();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        if (text.equals("overload")) {
            return Optional.of(new Overload(channel, requested, nanos));
        }
        if (text.equals("missing") || text.startsWith("missing: ")) {
            String reason = cells.name(row, column.at(), column.header()).substring("missing".length());
            return Optional.of(new Missing(
                    channel, reason.isEmpty() ? "not in the table" : reason.substring(2), requested, nanos));
        }
        return Optional.of(new Measured(channel, value(row, column, text), requested, nanos));
    }

    private double value(CSVRecord row, Column column, String text) {
        if (!form.unitsInCells()) {
            return cells.number(row, text, column.header())
                    * column.name().factor(column.name().unit().orElseThrow());
        }
        String[] parts = cells.withUnit(row, text, column.header());
        String unit = unitOf.computeIfAbsent(column, first -> parts[1]);
        if (!unit.equals(parts[1])) {
            throw cells.fault(
                    row,
                    column.header(),
                    Cells.shown(text) + " is in another unit than the rows above, which are" + " in " + unit
                            + "; write a column in one unit");
        }
        try {
            return cells.number(row, parts[0], column.header()) * column.name().factor(unit);
        } catch (IllegalArgumentException e) {
            throw cells.fault(row, column.header(), Cells.shown(text) + ": " + e.getMessage());
        }
    }

    private void change(CSVRecord row, List<String> step, long nanos) {
        steps.end();
        lastStep = step;
        if (step.equals(NO_STEP)) {
            return;
        }
        if (!ImportedSteps.STAGES.contains(step.get(0))) {
            throw cells.fault(
                    row,
                    "stage",
                    Cells.shown(step.get(0)) + " must be one of " + String.join(", ", ImportedSteps.STAGES));
        }
        if (step.get(1).isEmpty()) {
            throw cells.fault(row, "step", "is empty; name the step, such as 50 %");
        }
        if (!seen.add(step)) {
            String name = Cells.shown(step.get(1));
            throw cells.fault(row, "step", name + " comes again after other rows; give the repeat a name of its own");
        }
        if (seen.size() > MOST_STEPS) {
            throw cells.fault(row, "step", "is one of more than " + MOST_STEPS + "; take the table in parts");
        }
        steps.begin(begun(row, step, nanos));
    }

    private ImportedSteps.Begun begun(CSVRecord row, List<String> step, long nanos) {
        OptionalInt settled = columns.at("settled");
        SortedMap<String, Double> loads = new TreeMap<>();
        columns.loads().forEach((rail, at) -> optional(row, at, "set." + rail + "_A")
                .ifPresent(amps -> loads.put(rail, amps)));
        OptionalInt volts = columns.at("set.input_V");
        return new ImportedSteps.Begun(
                step.get(0),
                step.get(1),
                beginning(row, nanos),
                nanos,
                settled.isEmpty() || cells.yes(row, cells.text(row, settled.getAsInt(), "settled"), "settled"),
                volts.isPresent() ? optional(row, volts.getAsInt(), "set.input_V") : OptionalDouble.empty(),
                loads);
    }

    private OptionalDouble optional(CSVRecord row, int at, String column) {
        String text = cells.text(row, at, column);
        return text.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(cells.number(row, text, column));
    }
}
