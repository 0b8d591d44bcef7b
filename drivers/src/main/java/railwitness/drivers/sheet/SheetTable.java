package railwitness.drivers.sheet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of a sheet. A table that is not in the file is an empty one: its required keys are then missing. Every key
 * is asked for once, with its meaning; keys never asked for are refused at the end.
 */
public final class SheetTable {
    private final Sheet sheet;
    private final String name;
    private final TomlTable content;
    private final int line;
    private final Set<String> asked = new TreeSet<>();
    private final Set<String> refused = new TreeSet<>();
    private final boolean present;
    private boolean steersAmiss;

    SheetTable(Sheet sheet, String name, TomlTable content, int line) {
        this.sheet = sheet;
        this.name = name;
        this.present = content != null;
        this.content = present ? content : Toml.parse("");
        this.line = line;
    }

    /** False when the file has no such table. */
    public boolean present() {
        return present;
    }

    /** Line on which the table begins, from 1. */
    public int line() {
        return line;
    }

    /** The keys that stand in the file, for tables whose keys are free names; asking for them is still needed. */
    public List<String> keys() {
        return List.copyOf(content.keySet());
    }

    /** A number; whole ones count too. Its unit is read off the end of the key. */
    public NumberKey number(String key, String meaning) {
        return new NumberKey(place(key, "number", meaning));
    }

    /** A whole number. */
    public WholeKey whole(String key, String meaning) {
        return new WholeKey(place(key, "whole number", meaning));
    }

    public TextKey text(String key, String meaning) {
        return new TextKey(place(key, "text", meaning));
    }

    /** True or false. */
    public SheetKey<Boolean> flag(String key, String meaning) {
        return new SheetKey<>(
                place(key, "true or false", meaning), Boolean.class::isInstance, Boolean.class::cast, false);
    }

    /** A calendar date, written 2026-05-11. */
    public SheetKey<LocalDate> date(String key, String meaning) {
        return new SheetKey<>(
                place(key, "date", meaning), LocalDate.class::isInstance, LocalDate.class::cast, LocalDate.EPOCH);
    }

    /** One of several words, each standing for a value. */
    public <E> SheetKey<E> choice(String key, String meaning, E[] values, Function<E, String> word) {
        return new ChoiceKey<>(place(key, "text", meaning), List.of(values), word);
    }

    public NumbersKey numbers(String key, String meaning) {
        return new NumbersKey(place(key, "numbers", meaning));
    }

    public TextsKey texts(String key, String meaning) {
        return new TextsKey(place(key, "texts", meaning));
    }

    /** A table in this one: {@code [key]}, {@code key = {...}} or dotted keys. */
    public SheetTable table(String key, String meaning) {
        KeyPlace place = place(key, "table", meaning);
        place.note("", "optional");
        Object value = place.value();
        if (value != null && !(value instanceof TomlTable)) {
            place.refuse("must be a table");
        }
        return sheet.table(under(key, "[%s]"), value instanceof TomlTable t ? t : null, place.line());
    }

    /** The tables {@code [[key]]} in the order of the file; none is an empty list. */
    public List<SheetTable> tables(String key, String meaning) {
        KeyPlace place = place(key, "tables", meaning);
        place.note("", "optional");
        Object value = place.value();
        List<SheetTable> tables = new ArrayList<>();
        Optional<String> excess = Excess.in(value);
        if (excess.isPresent()) {
            place.refuse(excess.get());
        } else if (value instanceof TomlArray array && array.toList().stream().allMatch(TomlTable.class::isInstance)) {
            for (int i = 0; i < array.size(); i++) {
                tables.add(sheet.table(
                        under(key, "[[%s]]"),
                        array.getTable(i),
                        array.inputPositionOf(i).line()));
            }
        } else if (value != null) {
            place.refuse("must be tables, each begun by [[" + key + "]]");
        }
        return tables;
    }

    private String under(String key, String form) {
        if (name.isEmpty()) {
            return String.format(form, key);
        }
        return name + (name.endsWith("]") ? " " : ".") + key;
    }

    /** Records a fault of a key that only shows together with others, such as a lowest above a highest. */
    public void fault(String key, String words) {
        sheet.fault(lineOf(key), named(key) + " " + words);
    }

    private KeyPlace place(String key, String type, String meaning) {
        asked.add(key);
        return new KeyPlace(sheet, this, key, type, meaning);
    }

    Object value(String key) {
        return content.get(List.of(key));
    }

    int lineOf(String key) {
        TomlPosition position = content.inputPositionOf(List.of(key));
        return position == null ? line : position.line();
    }

    String name() {
        return name;
    }

    /** The key with its table, as messages name it. */
    String named(String key) {
        return name.isEmpty() ? key : name + " " + key;
    }

    /** @param steers whether it can decide which other keys are asked for, so that now not all were */
    void refuses(String key, boolean steers) {
        refused.add(key);
        steersAmiss |= steers;
    }

    /** @param all whether the reader came to its end; otherwise only what looks like a refused or missing key */
    void refuseUnknown(boolean all) {
        boolean asked = all && !steersAmiss;
        for (String key : content.keySet()) {
            String words = NearMiss.words(key, asked ? this.asked : refused);
            if (!this.asked.contains(key) && (asked || words.contains("did you mean"))) {
                sheet.fault(lineOf(key), named(key) + " is not a key that is known here" + words);
            }
        }
    }
}
