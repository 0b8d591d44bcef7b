package railwitness.drivers.sheet;

import java.util.List;
import org.tomlj.TomlArray;

/** A list of texts being asked for; a single text counts as a list of one. */
public final class TextsKey extends SheetKey<List<String>> {
    TextsKey(KeyPlace place) {
        super(place, TextsKey::areTexts, TextsKey::taken, List.of());
    }

    private static boolean areTexts(Object raw) {
        return raw instanceof String
                || raw instanceof TomlArray array && array.toList().stream().allMatch(String.class::isInstance);
    }

    private static List<String> taken(Object raw) {
        if (raw instanceof String one) {
            return List.of(one);
        }
        return ((TomlArray) raw).toList().stream().map(String.class::cast).toList();
    }

    /** @param words what the pattern allows, in words */
    public TextsKey eachMatching(String pattern, String words) {
        allow(values -> values.stream().allMatch(text -> text.matches(pattern)), "each " + words);
        return this;
    }
}
