package railwitness.drivers.sheet;

import java.util.List;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** Finds the line of a key in the text of a sheet, for faults that only show when several tables or sheets are compared. */
public final class KeyLine {
    private KeyLine() {}

    /**
     * Line from 1: the key's; where its table lacks it, the table's; where there is no such table, the first.
     *
     * @param header such as {@code [input]} or {@code [[rail]]}
     * @param place which of several tables of one name, from 0
     */
    public static int of(String text, String header, int place, String key) {
        TomlTable root = Toml.parse(text);
        List<String> name = List.of(header.replaceAll("[\\[\\]]", ""));
        Object found = root.get(name);
        if (found instanceof TomlArray array && place < array.size() && array.get(place) instanceof TomlTable table) {
            return line(table, key, array.inputPositionOf(place));
        }
        return found instanceof TomlTable table ? line(table, key, root.inputPositionOf(name)) : 1;
    }

    private static int line(TomlTable table, String key, TomlPosition otherwise) {
        TomlPosition position = table.inputPositionOf(List.of(key));
        TomlPosition at = position == null ? otherwise : position;
        return at == null ? 1 : at.line();
    }
}
