package railwitness.logger.screen.unit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.logger.screen.form.FormAct;
import railwitness.logger.screen.form.FormPart;
import railwitness.logger.screen.form.FormWords;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.sheet.SheetDraft;
import railwitness.logger.sheet.SheetEdit;
import railwitness.logger.sheet.SheetKeys;

/** The tables of a design sheet in the order of its form. */
final class DesignParts {
    private static final String RAIL = "[[rail]]";
    private static final String REQUIREMENT = "[[requirement]]";

    private final SheetDraft<Design> draft;
    private final Runnable changed;

    /** @param changed told when a table was added or taken out */
    DesignParts(SheetDraft<Design> draft, Runnable changed) {
        this.draft = draft;
        this.changed = changed;
    }

    List<FormPart> parts() {
        List<SheetKeys.Field> fields = draft.fields();
        List<FormPart> parts = new ArrayList<>();
        fields.stream()
                .map(SheetKeys.Field::header)
                .distinct()
                .filter(h -> !h.equals(REQUIREMENT))
                .forEach(header -> {
                    int count = Math.max(1, draft.edit().count(header));
                    for (int place = 0; place < count; place++) {
                        parts.add(FormPart.of(
                                FormWords.table(header, place, count),
                                of(fields, header, place).toList(),
                                header.equals(RAIL) && count > 1
                                        ? new FormAct[] {takeOut(RAIL, place)}
                                        : new FormAct[0]));
                    }
                    if (header.equals(RAIL)) {
                        parts.add(FormPart.of(
                                "",
                                List.of(),
                                add("add rail", "form.rail.add", RAIL, "name = \"rail-" + (count + 1) + "\"")));
                    }
                });
        requirements(fields, parts);
        return parts;
    }

    private void requirements(List<SheetKeys.Field> fields, List<FormPart> parts) {
        parts.add(FormPart.of(
                Words.of("table.requirement"),
                List.of(),
                add(
                        "add requirement",
                        "form.requirement.add",
                        REQUIREMENT,
                        "figure = \"" + FigureName.AVERAGE_EFFICIENCY.word() + "\"")));
        for (int place = 0; place < draft.edit().count(REQUIREMENT); place++) {
            List<SheetKeys.Field> mine = of(fields, REQUIREMENT, place).toList();
            parts.add(FormPart.line("", mine, unit(mine), takeOut(REQUIREMENT, place)));
        }
    }

    private static Stream<SheetKeys.Field> of(List<SheetKeys.Field> fields, String header, int place) {
        return fields.stream().filter(field -> field.header().equals(header) && field.place() == place);
    }

    /** The figure's unit; empty for a mere number. */
    private static String unit(List<SheetKeys.Field> requirement) {
        Optional<FigureName> figure = requirement.stream()
                .filter(field -> field.note().key().equals("figure"))
                .flatMap(field -> Stream.of(FigureName.values())
                        .filter(name -> field.literal().equals("\"" + name.word() + "\"")))
                .findFirst();
        String unit = figure.map(FigureName::unit).orElse("");
        return unit.equals("1") ? "" : Words.orElse("symbol." + unit, unit);
    }

    private FormAct add(String name, String label, String header, String body) {
        return FormAct.of(name, Words.of(label), () -> change(draft.edit().add(header, body)));
    }

    private FormAct takeOut(String header, int place) {
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
