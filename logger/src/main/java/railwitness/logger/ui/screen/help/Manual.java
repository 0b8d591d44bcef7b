package railwitness.logger.ui.screen.help;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The pages of the manual, by the mark that stands before each of them in its document. */
public final class Manual {
    private static final Pattern PAGE = Pattern.compile("<a id=\"([A-Za-z0-9,-]+)\"></a>\\s*\\n## (.+)\\n");

    private final Map<String, Page> pages = new LinkedHashMap<>();

    /**
     * One page.
     *
     * @param text as it stands in the document, tables and lists included
     */
    public record Page(String title, String text) {}

    private Manual(String document) {
        Matcher matcher = PAGE.matcher(document);
        String key = null;
        String title = "";
        int from = 0;
        while (matcher.find()) {
            if (key != null) {
                pages.put(
                        key,
                        new Page(
                                title, document.substring(from, matcher.start()).strip()));
            }
            key = matcher.group(1);
            title = matcher.group(2).strip();
            from = matcher.end();
        }
        if (key != null) {
            pages.put(key, new Page(title, document.substring(from).strip()));
        }
    }

    /** In the language of the window where there is one of it. */
    public static Manual of(Locale locale) {
        return read("window_" + locale.getLanguage() + ".md")
                .or(() -> read("window.md"))
                .map(Manual::new)
                .orElseThrow();
    }

    private static Optional<String> read(String name) {
        try (InputStream in = Manual.class.getResourceAsStream("/railwitness/manual/" + name)) {
            return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The page under this mark. */
    public Optional<Page> page(String key) {
        return Optional.ofNullable(pages.get(key));
    }

    /** All of them, in the document's order. */
    public Map<String, Page> pages() {
        return Map.copyOf(pages);
    }
}
