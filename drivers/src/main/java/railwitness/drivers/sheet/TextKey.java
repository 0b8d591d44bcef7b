package railwitness.drivers.sheet;

import java.util.List;

/** A text being asked for; an empty one is refused. */
public final class TextKey extends SheetKey<String> {
    TextKey(KeyPlace place) {
        super(place, raw -> raw instanceof String text && !text.isBlank(), raw -> (String) raw, "unnamed");
    }

    public TextKey oneOf(String... words) {
        allow(List.of(words)::contains, "one of " + listed(List.of(words)));
        return this;
    }

    /** @param words what the pattern allows, in words */
    public TextKey matching(String pattern, String words) {
        allow(text -> text.matches(pattern), words);
        return this;
    }

    /** Words between commas; between semicolons where a word has a comma of its own. */
    private static String listed(List<String> words) {
        return String.join(words.stream().anyMatch(word -> word.contains(", ")) ? "; " : ", ", words);
    }
}
