package railwitness.drivers.sheet;

import java.util.List;
import org.tomlj.TomlArray;

/** A list of texts being asked for. */
public final class TextsKey extends SheetKey<List<String>> {
    TextsKey(KeyPlace place) {
        super(place, TextsKey::areTexts, TextsKey::taken, List.of());
    }

    private static boolean areTexts(Object raw) {
        return raw instanceof TomlArray array && array.toList().stream().allMatch(String.class::isInstance);
    }

    private static List<String> taken(Object raw) {
        return ((TomlArray) raw).toList().stream().map(String.class::cast).toList();
    }

    /** @param words what the pattern allows, in words */
    public TextsKey eachMatching(String pattern, String words) {
        allow(values -> values.stream().allMatch(text -> text.matches(pattern)), "each " + words);
        return this;
    }
}
