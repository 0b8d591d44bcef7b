package railwitness.logger.recording.importing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.csv.CSVRecord;

/** Which column holds what, read from the first row. */
final class Columns {
    private static final String SET = "set.";
    private static final int MOST = 200;

    private final Path file;
    private final TableForm form;
    private final Map<String, Integer> plain = new HashMap<>();
    private final List<Column> readings = new ArrayList<>();
    private final Map<String, Integer> loads = new LinkedHashMap<>();

    /** A column of readings. */
    record Column(int at, String header, ColumnName name) {}

    Columns(Path file, TableForm form, CSVRecord row) {
        this.file = file;
        this.form = form;
        if (row.size() > MOST) {
            throw new ImportException(
                    file + ": has " + row.size() + " columns; keep those that are needed, " + MOST + " at most");
        }
        for (int i = 0; i < row.size(); i++) {
            String header = i == 0 ? row.get(i).replace("\uFEFF", "") : row.get(i);
            add(i, header.strip());
        }
        require(form.instants() ? "time" : "time_s", row);
        require("stage", row);
        require("step", row);
        if (form.instants() && (plain.containsKey("requested_s") || plain.containsKey("begin_s"))) {
            throw new ImportException(
                    file + ": columns 'requested_s' and 'begin_s' go with 'time_s'; choose seconds (leave --time out)");
        }
        if (readings.isEmpty()) {
            throw new ImportException(file + ": has no column of readings, such as input.voltage_V or plus.current_A");
        }
    }

    private void add(int at, String header) {
        switch (header) {
            case "time", "time_s", "requested_s", "begin_s", "stage", "step", "settled", "set.input_V", "rehearsal" ->
                once(at, header);
            default -> {
                if (header.startsWith(SET) && header.endsWith("_A")) {
                    once(at, header);
                    loads.put(header.substring(SET.length(), header.length() - 2), at);
                } else {
                    reading(at, header);
                }
            }
        }
    }

    private void once(int at, String header) {
        Integer before = plain.put(header, at);
        if (before != null) {
            throw twice(header, before, at);
        }
    }

    private ImportException twice(String header, int first, int second) {
        return new ImportException(file + ": row 1, column " + (second + 1) + ": " + Cells.shown(header)
                + " stands in column " + (first + 1) + " already; keep one of them");
    }

    private void reading(int at, String header) {
        ColumnName name = name(at, header);
        for (Column other : readings) {
            if (other.name().channel().equals(name.channel())) {
                throw twice(name.channel().toString(), other.at(), at);
            }
        }
        readings.add(new Column(at, header, name));
    }

    private ColumnName name(int at, String header) {
        try {
            Optional<ColumnName> name = ColumnName.of(header, form.unitsInCells());
            return name.orElseThrow(() -> new IllegalArgumentException(
                    "columns are time_s, stage, step and <node>.<what>_<unit>, such as plus.voltage_V"));
        } catch (IllegalArgumentException e) {
            throw new ImportException(file + ": row 1, column " + (at + 1) + ": " + Cells.shown(header) + ": "
                    + e.getMessage() + hint(header));
        }
    }

    private String hint(String header) {
        if (form.separator() != ';' && header.contains(";")) {
            return "; where semicolons stand between the cells, choose them (--separator semicolon)";
        }
        if (form.separator() != '\t' && header.contains("\t")) {
            return "; where tabs stand between the cells, choose them (--separator tab)";
        }
        return form.separator() != ',' && header.contains(",")
                ? "; where commas stand between the cells, choose them (--separator comma)"
                : "";
    }

    private void require(String name, CSVRecord row) {
        if (!plain.containsKey(name)) {
            String hint = name.equals("time_s") && plain.containsKey("time")
                    ? "; where time is written as instants, choose that (--time iso8601)"
                    : "";
            throw new ImportException(file + ": column '" + name + "' is missing among its " + row.size() + hint);
        }
    }

    /** Where a column of that name stands, if there is one. */
    OptionalInt at(String name) {
        return plain.containsKey(name) ? OptionalInt.of(plain.get(name)) : OptionalInt.empty();
    }

    List<Column> readings() {
        return readings;
    }

    /** Where the set currents of the rails stand. */
    Map<String, Integer> loads() {
        return loads;
    }
}
