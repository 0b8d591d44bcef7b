package railwitness.logger.ui.screen.form;

import java.util.List;
import java.util.Map;
import railwitness.logger.recording.sheet.SheetKeys;

/**
 * One table of a sheet as it stands in a form.
 *
 * @param title empty where it goes on under the title before
 * @param fields none for a title that stands alone
 * @param inOneLine whether its keys stand side by side
 * @param unit written behind a part in one line
 * @param acts what can be done to the table as a whole
 * @param offers by key, what is offered where anything may be written
 */
public record FormPart(
        String title,
        List<SheetKeys.Field> fields,
        boolean inOneLine,
        String unit,
        List<FormAct> acts,
        Map<String, List<String>> offers) {
    public FormPart {
        fields = List.copyOf(fields);
        acts = List.copyOf(acts);
    }

    public static FormPart of(String title, List<SheetKeys.Field> fields, FormAct... acts) {
        return new FormPart(title, fields, false, "", List.of(acts), Map.of());
    }

    public static FormPart line(String title, List<SheetKeys.Field> fields, String unit, FormAct... acts) {
        return new FormPart(title, fields, true, unit, List.of(acts), Map.of());
    }

    /** The same with words offered for some of its keys. */
    public FormPart offering(Map<String, List<String>> wanted) {
        return new FormPart(title, fields, inOneLine, unit, acts, wanted);
    }

    /** Whether it looks the same but for the values. */
    boolean sameAs(FormPart other) {
        if (!title.equals(other.title)
                || !unit.equals(other.unit)
                || fields.size() != other.fields.size()
                || acts.size() != other.acts.size()
                || !offers.equals(other.offers)) {
            return false;
        }
        for (int i = 0; i < fields.size(); i++) {
            if (!fields.get(i).sameAs(other.fields.get(i))) {
                return false;
            }
        }
        return true;
    }
}
