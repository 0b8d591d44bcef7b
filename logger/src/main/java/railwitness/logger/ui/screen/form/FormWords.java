package railwitness.logger.ui.screen.form;

import railwitness.drivers.sheet.KeyNote;
import railwitness.logger.ui.screen.widgets.Words;

/** What the tables of sheets are called. */
public final class FormWords {
    private FormWords() {}

    /** What a key means: the screen's own word where it has one, else that of the sheet's reader. */
    static String meaning(KeyNote note) {
        String table = note.table().replaceAll("[\\[\\]]", "").replace(' ', '.');
        return Words.orElse("meaning." + table + "." + note.key(), note.meaning())
                .replace("degC", "\u00b0C");
    }

    /** A key of a sheet in words, without its unit: on_resistance_ohm is on resistance. */
    public static String key(String key) {
        return Words.orElse(
                "key.words." + key,
                key.replaceAll("_(ohm|V|A|W|uF|uH|Hz|mm|mm2|T|s|C)$", "").replace('_', ' '));
    }

    /** Such as "Rail 2" for the second {@code [[rail]]}. */
    public static String table(String header, int place, int of) {
        String name = Words.orElse("table." + header.replaceAll("[\\[\\]]", ""), header);
        return of > 1 ? name + " " + (place + 1) : name;
    }
}
