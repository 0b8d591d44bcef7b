package railwitness.logger.screen.paper;

/** Keys as they are called on the keyboard. */
public final class Keys {
    private Keys() {}

    /** Such as "Ctrl Enter" for {@code control ENTER}. */
    public static String words(String stroke) {
        StringBuilder words = new StringBuilder();
        for (String part : stroke.split(" ")) {
            words.append(words.isEmpty() ? "" : " ").append(Words.orElse("key." + part, part));
        }
        return words.toString();
    }
}
