package railwitness.logger.screen.unit;

import java.util.ArrayList;
import java.util.List;
import railwitness.logger.plan.Plan;
import railwitness.logger.screen.form.FormAct;
import railwitness.logger.screen.form.FormPart;
import railwitness.logger.screen.form.FormWords;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.sheet.SheetDraft;
import railwitness.logger.sheet.SheetEdit;
import railwitness.logger.sheet.SheetKeys;

/** The stages of a plan in the order of its form, which is the order in which they are done. */
final class PlanParts {
    private static final String PLAN = "[plan]";
    private static final String STAGE = "[[stage]]";

    private final SheetDraft<Plan> draft;
    private final Runnable changed;

    /** @param changed told when a stage was added, moved or taken out */
    PlanParts(SheetDraft<Plan> draft, Runnable changed) {
        this.draft = draft;
        this.changed = changed;
    }

    List<FormPart> parts() {
        List<SheetKeys.Field> fields = draft.fields();
        List<FormPart> parts = new ArrayList<>();
        parts.add(FormPart.of(FormWords.table(PLAN, 0, 1), of(fields, PLAN, 0)));
        int count = draft.edit().count(STAGE);
        for (int place = 0; place < count; place++) {
            parts.add(FormPart.of(
                    Words.of("form.stage", place + 1),
                    of(fields, STAGE, place),
                    acts(place).toArray(new FormAct[0])));
        }
        parts.add(FormPart.of(
                "",
                List.of(),
                FormAct.of(
                        "add stage",
                        Words.of("form.stage.add"),
                        () -> change(draft.edit().add(STAGE, "kind = \"no-load\"")))));
        return parts;
    }

    private List<FormAct> acts(int place) {
        List<FormAct> acts = new ArrayList<>();
        if (place > 0) {
            acts.add(FormAct.of(
                    "earlier " + place,
                    Words.of("form.earlier"),
                    () -> change(draft.edit().earlier(STAGE, place))));
        }
        acts.add(FormAct.of(
                "take out " + STAGE + " " + place,
                Words.of("form.takeout"),
                () -> change(draft.edit().takeOut(STAGE, place))));
        return acts;
    }

    private static List<SheetKeys.Field> of(List<SheetKeys.Field> fields, String header, int place) {
        return fields.stream()
                .filter(field -> field.header().equals(header) && field.place() == place)
                .toList();
    }

    private void change(SheetEdit edit) {
        draft.set(edit);
        changed.run();
    }
}
