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

    String unit() {
        for (String part : key.split("_")) {
            if (UNITS.contains(part) && key.indexOf('_' + part) > 0) {
                return part.equals("pct") ? "%" : part;
            }
        }
        return "";
    }

    void note(String allowed, String otherwise) {
        sheet.note(new KeyNote(table.name(), key, type, unit(), allowed, otherwise, meaning));
    }

    void refuse(String words) {
        Object value = value();
        sheet.fault(line(), table.named(key) + (value == null ? " " : " = " + written(value) + " ") + words);
    }

    void missing(String allowed) {
        refuse("is missing: " + meaning + (allowed.isEmpty() ? "" : ", " + allowed));
    }

    private static String written(Object value) {
        if (value instanceof String text) {
            return '"' + text + '"';
        }
        if (value instanceof TomlArray array) {
            return array.toList().stream().map(KeyPlace::written).collect(Collectors.joining(", ", "[", "]"));
        }
        return value instanceof TomlTable ? "{...}" : value.toString();
    }
}
