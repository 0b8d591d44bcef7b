package railwitness.logger.screen.paper;

import java.util.ResourceBundle;

/** The sentences of the screen, from its resource bundle. */
public final class Words {
    private static final String BUNDLE = "railwitness.logger.screen.words";

    private Words() {}

    /**
     * The sentence under this key, with {0}, {1} and so on replaced.
     *
     * @throws java.util.MissingResourceException where the bundle lacks the key
     */
    public static String of(String key, Object... values) {
        String text = ResourceBundle.getBundle(BUNDLE).getString(key);
        for (int i = 0; i < values.length; i++) {
            text = text.replace("{" + i + "}", String.valueOf(values[i]));
        }
        return text;
    }

    /** The sentence under this key where the bundle has one, else the text given. */
    public static String orElse(String key, String otherwise) {
        ResourceBundle bundle = ResourceBundle.getBundle(BUNDLE);
        return bundle.containsKey(key) ? bundle.getString(key) : otherwise;
    }
}
