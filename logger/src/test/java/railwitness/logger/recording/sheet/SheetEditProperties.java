package railwitness.logger.recording.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlTable;

/** One key of any valid sheet is changed: parsed again, the sheets differ in that key alone, and the text in its value. */
class SheetEditProperties {
    private static final int SHEETS = Integer.getInteger("railwitness.edited.sheets", 400);
    private static final List<String> NEW = List.of("12.6", "\"new # \\\" one\"", "[1, 2]", "true", "\"\"");

    private static Object plain(Object value) {
        if (value instanceof TomlTable table) {
            Map<String, Object> map = new LinkedHashMap<>();
            table.keySet().forEach(key -> map.put(key, plain(table.get(List.of(key)))));
            return map;
        }
        return value instanceof TomlArray array
                ? new ArrayList<>(
                        array.toList().stream().map(SheetEditProperties::plain).toList())
                : value;
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> parsed(String text, String what) {
        TomlParseResult result = Toml.parse(text.replaceFirst("^\uFEFF", ""));
        assertThat(result.errors()).as(what + "\n" + text).isEmpty();
        return (Map<String, Object>) plain(result);
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> table(Map<String, Object> root, String header, int place, boolean make) {
        String[] parts = header.split("] ");
        String name = parts[0].replaceAll("[\\[\\]]", "");
        Map<String, Object> at;
        if (header.startsWith("[[")) {
            at = ((List<Map<String, Object>>) root.get(name)).get(place);
        } else {
            at = (Map<String, Object>) (make ? root.computeIfAbsent(name, k -> new LinkedHashMap<>()) : root.get(name));
        }
        for (String inner : parts.length > 1 ? parts[1].split("\\.") : new String[0]) {
            Map<String, Object> from = at;
            at = (Map<String, Object>)
                    (make ? from.computeIfAbsent(inner, k -> new LinkedHashMap<>()) : from.get(inner));
        }
        return at;
    }

    @Test
    void oneValueIsChangedAndNothingElse() {
        for (long seed = 1; seed <= SHEETS; seed++) {
            DrawnSheet sheet = new DrawnSheet(seed);
            String text = sheet.text();
            Map<String, Object> before = parsed(text, "seed " + seed);
            Random random = new Random(seed);
            for (DrawnSheet.Spot spot : sheet.spots()) {
                String what = "seed " + seed + ", " + spot;
                String literal = NEW.get(random.nextInt(NEW.size()));
                String after = new SheetEdit(text)
                        .set(spot.table(), spot.place(), spot.key(), literal)
                        .text();
                assertThat(after)
                        .as(what)
                        .isEqualTo(text.substring(0, spot.from()) + literal + text.substring(spot.to()));
                Map<String, Object> expected = parsed(text, what);
                table(expected, spot.table(), spot.place(), false)
                        .put(spot.key(), parsed("v = " + literal, what).get("v"));
                assertThat(parsed(after, what)).as(what).isEqualTo(expected).isNotSameAs(before);
            }
        }
    }

    @Test
    void valueSetToItselfLeavesTheText() {
        for (long seed = 1; seed <= SHEETS; seed++) {
            DrawnSheet sheet = new DrawnSheet(seed);
            SheetEdit edit = new SheetEdit(sheet.text());
            for (DrawnSheet.Spot spot : sheet.spots()) {
                String literal = edit.literal(spot.table(), spot.place(), spot.key());
                edit.set(spot.table(), spot.place(), spot.key(), literal);
                assertThat(parsed("v = " + literal, "seed " + seed + ", " + spot)
                                .get("v"))
                        .as("seed " + seed + ", " + spot)
                        .isEqualTo(parsed("v = " + sheet.text().substring(spot.from(), spot.to()), "")
                                .get("v"));
            }
            assertThat(edit.text()).as("seed " + seed).isEqualTo(sheet.text());
        }
    }

    @Test
    void newKeyIsAddedAndNothingElse() {
        for (long seed = 1; seed <= SHEETS; seed++) {
            DrawnSheet sheet = new DrawnSheet(seed);
            String text = sheet.text();
            List<DrawnSheet.Spot> spots = new ArrayList<>(sheet.spots());
            spots.addAll(sheet.spots().stream()
                    .map(spot -> new DrawnSheet.Spot(
                            spot.table().replaceFirst("] .*", "]") + " limits.inner", spot.place(), "x", 0, 0))
                    .toList());
            spots.add(new DrawnSheet.Spot("[fresh]", 0, "x", 0, 0));
            for (DrawnSheet.Spot spot : spots) {
                String what = "seed " + seed + ", " + spot;
                String after = new SheetEdit(text)
                        .set(spot.table(), spot.place(), "brand new", "7")
                        .text();
                Map<String, Object> expected = parsed(text, what);
                table(expected, spot.table(), spot.place(), true).put("brand new", 7L);
                assertThat(parsed(after, what)).as(what + "\n" + text).isEqualTo(expected);
                assertOnlyInserted(text, after, what);
            }
        }
    }

    private static void assertOnlyInserted(String text, String after, String what) {
        int same = 0;
        while (same < text.length() && text.charAt(same) == after.charAt(same)) {
            same++;
        }
        String rest = text.substring(same);
        // blanks at the very end may go when a table is added there
        assertThat(after.endsWith(rest) || rest.isBlank())
                .as(what + "\n" + text + "\n->\n" + after)
                .isTrue();
    }

    @Test
    void emptiedKeyIsGoneAndNothingElse() {
        for (long seed = 1; seed <= SHEETS; seed++) {
            DrawnSheet sheet = new DrawnSheet(seed);
            for (DrawnSheet.Spot spot : sheet.spots()) {
                String what = "seed " + seed + ", " + spot;
                Map<String, Object> expected = parsed(sheet.text(), what);
                Map<String, Object> table = table(expected, spot.table(), spot.place(), false);
                table.remove(spot.key());
                Map<String, Object> found = parsed(
                        new SheetEdit(sheet.text())
                                .set(spot.table(), spot.place(), spot.key(), "")
                                .text(),
                        what);
                // a table that had this key only may go with it
                assertThat(withoutEmpty(found)).as(what).isEqualTo(withoutEmpty(expected));
            }
        }
    }

    private static Object withoutEmpty(Object value) {
        if (value instanceof Map<?, ?> map) {
            Map<Object, Object> full = new LinkedHashMap<>();
            map.forEach((key, inner) -> {
                Object kept = withoutEmpty(inner);
                if (!(kept instanceof Map<?, ?> none && none.isEmpty())) {
                    full.put(key, kept);
                }
            });
            return full;
        }
        return value instanceof List<?> list
                ? list.stream().map(SheetEditProperties::withoutEmpty).toList()
                : value;
    }
}
