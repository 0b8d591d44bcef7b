package railwitness.logger.ui.screen.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.drivers.bench.BenchSheet;
import railwitness.logger.recording.sheet.SheetDraft;
import railwitness.logger.recording.sheet.SheetEdit;
import railwitness.logger.recording.sheet.SheetKeys;
import railwitness.logger.ui.screen.form.FormPart;
import railwitness.logger.ui.screen.form.FormWords;
import railwitness.logger.ui.screen.widgets.Words;

/** What stands in the form of one instrument: first what one must know of it, then how well it reads. */
final class BenchParts {
    private static final List<String> FIRST = List.of(
            "name",
            "kind",
            "port",
            "baud",
            "expect",
            "dialect",
            "reads",
            "rail",
            "function",
            "range",
            "shunt_ohm",
            "shunt_tolerance_pct",
            "highest_V",
            "highest_A",
            "highest_W",
            "drives_remote",
            "resistances_ohm");

    private BenchParts() {}

    static List<FormPart> of(SheetDraft<BenchSheet> draft, BenchPlace place, Design design) {
        Map<String, List<SheetKeys.Field>> tables = new LinkedHashMap<>();
        draft.fields().stream()
                .filter(field -> field.header().equals(place.header()) && field.place() == place.place())
                .forEach(field -> tables.computeIfAbsent(field.note().table(), table -> new ArrayList<>())
                        .add(field));
        Set<String> measured = measured(draft.edit(), place);
        List<FormPart> parts = new ArrayList<>();
        tables.forEach((table, fields) -> {
            if (table.equals(place.header())) {
                parts.add(FormPart.of(FormWords.table(table, 0, 1), ordered(fields))
                        .offering(offers(design)));
            } else if (stated(fields) || measured.contains(quantity(table))) {
                parts.add(FormPart.of(title(quantity(table)), fields));
            }
        });
        return parts;
    }

    /** What there is to be read at this unit, and its rails. */
    private static Map<String, List<String>> offers(Design design) {
        List<String> rails = design.rails().stream().map(Rail::name).toList();
        List<String> channels = new ArrayList<>(List.of("input.voltage", "input.current"));
        for (String quantity : List.of("voltage", "current", "ripple")) {
            rails.forEach(rail -> channels.add(rail + "." + quantity));
        }
        channels.addAll(List.of("heatsink.temperature", "ambient.temperature"));
        return Map.of("reads", channels, "rail", rails);
    }

    private static List<SheetKeys.Field> ordered(List<SheetKeys.Field> fields) {
        return fields.stream()
                .sorted(Comparator.comparingInt(field -> {
                    int at = FIRST.indexOf(field.note().key());
                    return at < 0 ? FIRST.size() : at;
                }))
                .toList();
    }

    private static boolean stated(List<SheetKeys.Field> fields) {
        return fields.stream().anyMatch(field -> !field.literal().isEmpty());
    }

    /** Of {@code [[instrument]] accuracy.voltage} the voltage; of {@code [[hand_read]] accuracy} nothing. */
    private static String quantity(String table) {
        int dot = table.lastIndexOf('.');
        return dot < 0 ? "" : table.substring(dot + 1);
    }

    private static String title(String quantity) {
        return quantity.isEmpty()
                ? Words.of("bench.accuracy")
                : Words.of("bench.accuracy.of", Words.of("quantity." + quantity));
    }

    /** The quantities that the instrument itself measures: a meter on a shunt a voltage. */
    private static Set<String> measured(SheetEdit sheet, BenchPlace place) {
        if (!place.instrument()) {
            return Set.of("");
        }
        String function = place.text(sheet, "function");
        String reads = place.text(sheet, "reads");
        return switch (place.text(sheet, "kind")) {
            case "supply" -> Set.of("voltage", "current");
            case "load" -> Set.of("current");
            default -> Set.of(function.isEmpty() ? reads.replaceFirst("^.*\\.", "") : function);
        };
    }
}
