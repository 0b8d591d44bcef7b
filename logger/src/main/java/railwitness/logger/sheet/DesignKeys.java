package railwitness.logger.sheet;

import java.util.ArrayList;
import java.util.List;
import railwitness.drivers.sheet.KeyNote;
import railwitness.drivers.sheet.KeyNotes;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetException;

/** Every key a design sheet may have, as its reader describes them, and what a given sheet says for it. */
public final class DesignKeys {
    private static final String EVERY_TABLE = """
            [transformer]
            [switches]
            [rectifier]
            [filter]
            [[rail]]
            """;

    private DesignKeys() {}

    /**
     * One key of one table.
     *
     * @param place which of several tables of one name, from 0
     * @param literal as it stands in the sheet, quotes included; empty where it does not
     */
    public record Field(KeyNote note, int place, String literal) {}

    /** All keys in the order in which the reader asks for them; those of a rail once for each rail. Lists of tables of requirements are left to the text. */
    public static List<Field> of(String text) {
        KeyNotes notes = new KeyNotes();
        try {
            Sheet.of("", EVERY_TABLE, notes).read(DesignReader::design);
        } catch (SheetException expected) {
            // the template is empty on purpose: only the notes are wanted
        }
        SheetEdit edit = new SheetEdit(text);
        List<Field> fields = new ArrayList<>();
        for (KeyNote note : notes.all()) {
            if (note.type().startsWith("table")
                    || note.table().contains("requirement")
                    || note.table().isEmpty()) {
                continue;
            }
            int tables = Math.max(1, edit.count(note.table()));
            for (int place = 0; place < tables; place++) {
                fields.add(new Field(note, place, edit.literal(note.table(), place, note.key())));
            }
        }
        return fields;
    }
}
