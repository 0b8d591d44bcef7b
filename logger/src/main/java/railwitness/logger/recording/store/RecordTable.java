package railwitness.logger.recording.store;

import java.util.List;

/**
 * The tables whose rows are records of the chain, readings aside. The tag and the order of the columns are what the
 * chain is fed with; both are part of the file's format.
 */
enum RecordTable {
    SESSION(
            'A',
            "id",
            "started_wall",
            "zone",
            "rehearsal",
            "program_version",
            "acknowledged_by",
            "unit_name",
            "unit_serial",
            "unit_condition"),
    CHANNEL('C', "name", "unit"),
    REASON('R', "text"),
    SHEET('S', "kind", "file_name", "text", "digest"),
    INSTRUMENT('I', "name", "kind", "port", "dialect", "maker", "model", "serial", "firmware", "accuracy"),
    STEP(
            'P',
            "stage",
            "step",
            "begin_ns",
            "average_from_ns",
            "average_to_ns",
            "settled",
            "outcome",
            "reason",
            "input_volts"),
    STEP_LOAD('L', "step", "rail", "amps"),
    EVENT('E', "at_ns", "what", "text"),
    EXCHANGE('X', "at_ns", "instrument", "sent", "received", "trouble"),
    WAVEFORM('W', "at_ns", "channel", "start_seconds", "step_seconds", "samples"),
    NOTE('N', "at_ns", "author", "text"),
    ANCHOR('K', "at_ns", "wall"),
    ENDING('Z', "at_ns", "state");

    private final char tag;
    private final List<String> columns;

    RecordTable(char tag, String... columns) {
        this.tag = tag;
        this.columns = List.of(columns);
    }

    char tag() {
        return tag;
    }

    int columnCount() {
        return columns.size();
    }

    /** The table's name in the file. */
    String tableName() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /** True when the first column is a time of the session's axis that moves the session on. */
    boolean hasTime() {
        return columns.get(0).equals("at_ns");
    }

    String insertSql() {
        return "INSERT INTO " + tableName() + " (seq, " + String.join(", ", columns) + ") VALUES (?"
                + ", ?".repeat(columns.size()) + ")";
    }

    /** All rows in recording order: the number, then the columns. */
    String selectSql() {
        return "SELECT seq, " + String.join(", ", columns) + " FROM " + tableName() + " ORDER BY seq";
    }
}
