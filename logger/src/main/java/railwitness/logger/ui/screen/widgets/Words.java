package railwitness.logger.ui.screen.widgets;

import java.util.Locale;
import java.util.ResourceBundle;

/** The sentences of the screen, from its resource bundle. */
public final class Words {
    private static final String BUNDLE = "railwitness.logger.ui.screen.words";
    private static volatile Known known = new Known(null, null);

    /** The bundle of the locale for which it was last asked. */
    private record Known(Locale locale, ResourceBundle bundle) {}

    private Words() {}

    /**
     * The sentence under this key, with {0}, {1} and so on replaced.
     *
     * @throws java.util.MissingResourceException where the bundle lacks the key
     */
    public static String of(String key, Object... values) {
        String text = bundle().getString(key);
        for (int i = 0; i < values.length; i++) {
            text = text.replace("{" + i + "}", String.valueOf(values[i]));
        }
        return text;
    }

    /** The sentence under this key where the bundle has one, else the text given. */
    public static String orElse(String key, String otherwise) {
        ResourceBundle bundle = bundle();
        return bundle.containsKey(key) ? bundle.getString(key) : otherwise;
    }

    private static ResourceBundle bundle() {
        Locale locale = Locale.getDefault();
        Known last = known;
        if (!locale.equals(last.locale())) {
            last = new Known(locale, ResourceBundle.getBundle(BUNDLE, locale));
            known = last;
        }
        return last.bundle();
    }
}
