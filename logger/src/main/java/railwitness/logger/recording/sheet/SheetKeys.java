package railwitness.logger.recording.sheet;

import java.util.ArrayList;
import java.util.List;
import railwitness.drivers.sheet.KeyNote;
import railwitness.drivers.sheet.KeyNotes;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetException;

/** Every key a sheet may have, as its reader describes them, and what a given sheet says for it. */
public final class SheetKeys {
    private SheetKeys() {}

    /**
     * One key of one table.
     *
     * @param place which of several tables of one name, from 0
     * @param literal as it stands in the sheet, quotes included; empty where it does not
     * @param open what stands there is only an example, and the comment beside it says so
     */
    public record Field(KeyNote note, int place, String literal, boolean open) {
        private static final String ONE_OF = "one of ";

        /** The words that may stand there; empty where anything else may. */
        public List<String> choices() {
            if (note.type().equals("true or false")) {
                return List.of("true", "false");
            }
            String allowed = note.allowed();
            return allowed.startsWith(ONE_OF)
                    ? List.of(allowed.substring(ONE_OF.length()).split(allowed.contains("; ") ? "; " : ", "))
                    : List.of();
        }

        /** Header of its table, such as {@code [[instrument]]}, without a table inside it. */
        public String header() {
            int inner = note.table().indexOf("] ");
            return inner < 0 ? note.table() : note.table().substring(0, inner + 1);
        }

        /** The same key of the same table. */
        public boolean sameAs(Field other) {
            return place == other.place
                    && note.key().equals(other.note.key())
                    && note.table().equals(other.note.table());
        }
    }

    /** All keys, table by table, in the order in which the reader asks for them; those of a rail once for each rail. */
    public static List<Field> of(SheetKind kind, String text) {
        SheetEdit edit = new SheetEdit(text);
        List<KeyNote> notes = notes(kind, kind.everyTable());
        List<Field> fields = new ArrayList<>();
        for (KeyNote table : notes) {
            if (table.table().isEmpty() && table.type().equals("table")) {
                fields.addAll(fields(notes, "[" + table.key() + "]", 0, edit));
            } else if (table.table().isEmpty() && table.type().equals("tables")) {
                fields.addAll(each(kind, "[[" + table.key() + "]]", edit));
            }
        }
        return fields;
    }

    /** What a table is asked for can depend on what it says, so each is read by itself. */
    private static List<Field> each(SheetKind kind, String header, SheetEdit edit) {
        List<Field> fields = new ArrayList<>();
        for (int place = 0; place < edit.count(header); place++) {
            List<KeyNote> notes = notes(kind, edit.alone(header, place));
            fields.addAll(fields(notes, header, place, edit));
        }
        return fields;
    }

    private static List<Field> fields(List<KeyNote> notes, String header, int place, SheetEdit edit) {
        return notes.stream()
                .filter(note -> note.table().equals(header) || note.table().startsWith(header + " "))
                .filter(note -> !note.type().startsWith("table"))
                .map(note -> new Field(
                        note,
                        place,
                        edit.literal(note.table(), place, note.key()),
                        edit.comment(note.table(), place, note.key()).startsWith(SheetDraft.OPEN)))
                .toList();
    }

    /** What the reader asks for; that it finds faults is of no interest here. */
    private static List<KeyNote> notes(SheetKind kind, String text) {
        KeyNotes notes = new KeyNotes();
        try {
            Sheet.of("", text, notes).read(kind.reader());
        } catch (SheetException expected) {
            // only the notes are wanted
        }
        return notes.all();
    }
}
