package railwitness.drivers.sheet;

import java.util.Set;
import java.util.stream.Collectors;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** One key of one table: what stands there, on which line, and what is said of it. */
final class KeyPlace {
    private static final Set<String> UNITS = Set.of(
            "V", "A", "W", "J", "s", "h", "Hz", "kHz", "ohm", "degC", "pct", "uF", "nF", "nH", "uH", "T", "mm", "mm2",
            "mm3", "cm2", "ppm", "turns", "min", "K", "dB");
    private static final int MOST_SHOWN = 80;

    private final Sheet sheet;
    private final SheetTable table;
    private final String key;
    private final String type;
    private final String meaning;

    KeyPlace(Sheet sheet, SheetTable table, String key, String type, String meaning) {
        this.sheet = sheet;
        this.table = table;
        this.key = key;
        this.type = type;
        this.meaning = meaning;
    }

    Object value() {
        return table.value(key);
    }

    int line() {
        return table.lineOf(key);
    }

    String type() {
        return type;
    }

    /** The last unit in the name: V of highest_V, ohm of rail_ohm_at_least, %/degC of reading_pct_per_degC. */
    String unit() {
        String[] parts = key.split("_");
        for (int i = parts.length - 1; i > 0; i--) {
            if (UNITS.contains(parts[i])) {
                boolean quotient = i > 1 && parts[i - 1].equals("per") && UNITS.contains(parts[i - 2]);
                return quotient ? unitOf(parts[i - 2]) + "/" + unitOf(parts[i]) : unitOf(parts[i]);
            }
        }
        return "";
    }

    private static String unitOf(String unit) {
        return unit.equals("pct") ? "%" : unit;
    }

    void note(String allowed, String otherwise) {
        sheet.note(new KeyNote(table.name(), key, type, unit(), allowed, otherwise, meaning));
    }

    void refuse(String words) {
        table.refuses(key, type.startsWith("t") && (!type.startsWith("text") || words.contains("one of ")));
        Object value = value();
        sheet.fault(line(), table.named(key) + (value == null ? " " : " = " + shown(value) + " ") + words);
    }

    void missing(String allowed) {
        refuse("is missing: " + meaning + (allowed.isEmpty() ? "" : ", " + allowed));
    }

    private static String shown(Object value) {
        String whole = written(value);
        return whole.length() <= MOST_SHOWN ? whole : whole.substring(0, MOST_SHOWN) + "...";
    }

    private static String written(Object value) {
        if (value instanceof String text) {
            return '"' + text + '"';
        }
        if (value instanceof TomlArray array) {
            return array.toList().stream()
                    .limit(MOST_SHOWN)
                    .map(KeyPlace::shown)
                    .collect(Collectors.joining(", ", "[", "]"));
        }
        return value instanceof TomlTable ? "{...}" : value.toString();
    }
}
