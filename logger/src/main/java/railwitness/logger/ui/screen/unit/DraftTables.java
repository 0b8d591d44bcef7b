package railwitness.logger.ui.screen.unit;

import java.util.List;
import railwitness.logger.recording.sheet.SheetDraft;
import railwitness.logger.recording.sheet.SheetEdit;
import railwitness.logger.recording.sheet.SheetKeys;
import railwitness.logger.ui.screen.form.FormAct;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * The tables of a sheet that is being written, and what can be done to them.
 *
 * @param changed told when a table was added, moved or taken out
 */
record DraftTables(SheetDraft<?> draft, Runnable changed) {
    int count(String header) {
        return draft.edit().count(header);
    }

    /** Those of all the draft's fields that belong to one table. */
    static List<SheetKeys.Field> of(List<SheetKeys.Field> all, String header, int place) {
        return all.stream()
                .filter(field -> field.header().equals(header) && field.place() == place)
                .toList();
    }

    /** @param label key of its words */
    FormAct add(String name, String label, String header, String body) {
        return FormAct.of(name, Words.of(label), () -> change(draft.edit().add(header, body)));
    }

    FormAct earlier(String header, int place) {
        return FormAct.of(
                "earlier " + place,
                Words.of("form.earlier"),
                () -> change(draft.edit().earlier(header, place)));
    }

    FormAct takeOut(String header, int place) {
        return FormAct.of(
                "take out " + header + " " + place,
                Words.of("form.takeout"),
                () -> change(draft.edit().takeOut(header, place)));
    }

    private void change(SheetEdit edit) {
        draft.set(edit);
        changed.run();
    }
}
