package railwitness.logger.ui.screen.unit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.logger.recording.sheet.SheetDraft;
import railwitness.logger.recording.sheet.SheetKeys;
import railwitness.logger.ui.screen.form.FormAct;
import railwitness.logger.ui.screen.form.FormPart;
import railwitness.logger.ui.screen.form.FormWords;
import railwitness.logger.ui.screen.widgets.Words;

/** The tables of a design sheet in the order of its form. */
final class DesignParts {
    private static final String RAIL = "[[rail]]";
    private static final String REQUIREMENT = "[[requirement]]";

    private final SheetDraft<Design> draft;
    private final DraftTables tables;

    /** @param changed told when a table was added or taken out */
    DesignParts(SheetDraft<Design> draft, Runnable changed) {
        this.draft = draft;
        this.tables = new DraftTables(draft, changed);
    }

    List<FormPart> parts() {
        List<SheetKeys.Field> fields = draft.fields();
        List<FormPart> parts = new ArrayList<>();
        fields.stream()
                .map(SheetKeys.Field::header)
                .distinct()
                .filter(h -> !h.equals(REQUIREMENT))
                .forEach(header -> {
                    int count = Math.max(1, tables.count(header));
                    for (int place = 0; place < count; place++) {
                        parts.add(FormPart.of(
                                FormWords.table(header, place, count),
                                DraftTables.of(fields, header, place),
                                header.equals(RAIL) && count > 1
                                        ? new FormAct[] {tables.takeOut(RAIL, place)}
                                        : new FormAct[0]));
                    }
                    if (header.equals(RAIL)) {
                        parts.add(FormPart.of(
                                "",
                                List.of(),
                                tables.add("add rail", "form.rail.add", RAIL, "name = \"rail-" + (count + 1) + "\"")));
                    }
                });
        requirements(fields, parts);
        return parts;
    }

    private void requirements(List<SheetKeys.Field> fields, List<FormPart> parts) {
        parts.add(FormPart.of(
                Words.of("table.requirement"),
                List.of(),
                tables.add(
                        "add requirement",
                        "form.requirement.add",
                        REQUIREMENT,
                        "figure = \"" + FigureName.AVERAGE_EFFICIENCY.word() + "\"")));
        for (int place = 0; place < tables.count(REQUIREMENT); place++) {
            List<SheetKeys.Field> mine = DraftTables.of(fields, REQUIREMENT, place);
            parts.add(FormPart.line("", mine, unit(mine), tables.takeOut(REQUIREMENT, place)));
        }
    }

    /** The figure's unit; empty for a mere number. */
    private static String unit(List<SheetKeys.Field> requirement) {
        Optional<FigureName> figure = requirement.stream()
                .filter(field -> field.note().key().equals("figure"))
                .flatMap(field -> Stream.of(FigureName.values())
                        .filter(name -> field.literal().equals("\"" + name.word() + "\"")))
                .findFirst();
        String unit = figure.map(FigureName::unit).orElse("");
        return figure.filter(name -> railwitness.logger.ui.screen.widgets.FigureWords.of(name)
                                .unit()
                                .equals("%"))
                        .isPresent()
                ? "%"
                : unit.equals("1") ? "" : Words.orElse("symbol." + unit, unit);
    }
}
