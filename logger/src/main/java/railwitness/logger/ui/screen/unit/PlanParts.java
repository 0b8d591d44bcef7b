package railwitness.logger.ui.screen.unit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.sheet.SheetDraft;
import railwitness.logger.recording.sheet.SheetKeys;
import railwitness.logger.ui.screen.form.FormAct;
import railwitness.logger.ui.screen.form.FormPart;
import railwitness.logger.ui.screen.form.FormWords;
import railwitness.logger.ui.screen.widgets.Words;

/** The stages of a plan in the order of its form, which is the order in which they are done. */
final class PlanParts {
    private static final String PLAN = "[plan]";
    private static final String STAGE = "[[stage]]";

    private final SheetDraft<Plan> draft;
    private final DraftTables tables;

    /** @param changed told when a stage was added, moved or taken out */
    PlanParts(SheetDraft<Plan> draft, Runnable changed) {
        this.draft = draft;
        this.tables = new DraftTables(draft, changed);
    }

    List<FormPart> parts() {
        List<SheetKeys.Field> fields = draft.fields();
        List<FormPart> parts = new ArrayList<>();
        parts.add(FormPart.of(FormWords.table(PLAN, 0, 1), DraftTables.of(fields, PLAN, 0)));
        for (int place = 0; place < tables.count(STAGE); place++) {
            parts.add(FormPart.of(
                    tested(DraftTables.of(fields, STAGE, place)),
                    DraftTables.of(fields, STAGE, place),
                    acts(place).toArray(new FormAct[0])));
        }
        parts.add(FormPart.of("", List.of(), tables.add("add stage", "form.stage.add", STAGE, "kind = \"no-load\"")));
        return parts;
    }

    /** A stage is called by what is tested in it. */
    private static String tested(List<SheetKeys.Field> stage) {
        return stage.stream()
                .filter(field -> field.note().key().equals("kind"))
                .findFirst()
                .map(kind -> kind.literal().replace("\"", ""))
                .map(kind -> Words.orElse("choice." + kind, kind))
                .map(words -> words.substring(0, Math.min(1, words.length())).toUpperCase(Locale.ROOT)
                        + words.substring(Math.min(1, words.length())))
                .orElse("");
    }

    private List<FormAct> acts(int place) {
        FormAct out = tables.takeOut(STAGE, place);
        return place > 0 ? List.of(tables.earlier(STAGE, place), out) : List.of(out);
    }
}
