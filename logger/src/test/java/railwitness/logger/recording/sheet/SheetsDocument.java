package railwitness.logger.recording.sheet;

import java.util.List;
import java.util.function.Function;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.KeyNote;
import railwitness.drivers.sheet.KeyNotes;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetException;
import railwitness.drivers.sheet.SheetTable;

/** Every key that the three sheets know, found by reading sheets that reach every branch, written as a document. */
final class SheetsDocument {
    private static final String DESIGN = """
            [transformer]
            [switches]
            [rectifier]
            [filter]
            [[rail]]
            [[requirement]]
            """;
    private static final String PLAN = """
            [[stage]]
            kind = "transformer"
            [[stage]]
            kind = "standby"
            [[stage]]
            kind = "power-up"
            [[stage]]
            kind = "load-sweep"
            [[stage]]
            kind = "line-sweep"
            [[stage]]
            kind = "cross-load"
            [[stage]]
            kind = "hold"
            [[stage.cycle]]
            """;
    private static final String BENCH = """
            [bench]
            [[instrument]]
            kind = "supply"
            drives_remote = true
            [[instrument]]
            kind = "meter"
            reads = "input.current"
            function = "voltage"
            [[instrument]]
            kind = "meter"
            reads = "plus.ripple"
            [[instrument]]
            kind = "load"
            [[instrument]]
            kind = "scope"
            [[hand_read]]
            [[resistor_bank]]
            """;

    private SheetsDocument() {}

    static String document() {
        StringBuilder text = new StringBuilder("""
                # The three sheets

                Design sheet, bench sheet and plan are TOML files. Every key that is known stands here; any other is refused, and so
                is a value outside of what is allowed, with file, line and key. The unit of a number is the end of its name:
                `nominal_V` is in volts, `settle_at_most_s` in seconds, `reading_pct` in percent. A key that is not required may be
                left out; the column 'left out' says what is taken then.

                The files in `sessions-sample/demo/` are a working example of each.
                """);
        table(text, "Design sheet: what the unit should be", DESIGN, DesignReader::design);
        table(text, "Bench sheet: which instrument reads what", BENCH, BenchSheet::from);
        table(text, "Plan: what is done, in order", PLAN, PlanReader::plan);
        text.append("""

                With `hold_input = "terminals"` the supply is raised at each step, in small moves and only upwards, until the unit's own
                terminals read the step's input; before the next step it is lowered again. It is never set higher than
                `raise_at_most_V` above the step's input, nor beyond what the supply gives; where that is not enough the session says
                so and the step is measured as it stands. It needs a meter that reads `input.voltage`. Steps with the unit off, cycles
                and the search for the drop-out voltage are never raised.
                """);
        return text.toString();
    }

    private static void table(StringBuilder text, String title, String sheet, Function<SheetTable, ?> reader) {
        text.append("\n## ").append(title).append("\n");
        String before = null;
        for (KeyNote note : keys(sheet, reader)) {
            if (note.type().startsWith("table") && note.table().isEmpty()) {
                continue;
            }
            if (!note.table().equals(before)) {
                before = note.table();
                text.append("\n### `").append(note.table()).append("`\n\n");
                text.append("| key | is | allowed | left out | meaning |\n|---|---|---|---|---|\n");
            }
            text.append("| `")
                    .append(note.key())
                    .append("` | ")
                    .append(note.type())
                    .append(note.unit().isEmpty() ? "" : ", " + note.unit())
                    .append(" | ")
                    .append(note.allowed())
                    .append(" | ")
                    .append(note.otherwise())
                    .append(" | ")
                    .append(note.meaning())
                    .append(" |\n");
        }
    }

    /** The sheets above have faults on purpose; what they ask for counts. */
    private static List<KeyNote> keys(String sheet, Function<SheetTable, ?> reader) {
        KeyNotes notes = new KeyNotes();
        try {
            Sheet.of("keys.toml", sheet, notes).read(reader);
        } catch (SheetException e) {
            // asked for all the same
        }
        return notes.all().stream()
                .sorted(java.util.Comparator.comparing(
                        KeyNote::table, java.util.Comparator.comparingInt(table -> order(notes.all(), table))))
                .toList();
    }

    private static int order(List<KeyNote> notes, String table) {
        for (int i = 0; i < notes.size(); i++) {
            if (notes.get(i).table().equals(table)) {
                return i;
            }
        }
        return notes.size();
    }
}
