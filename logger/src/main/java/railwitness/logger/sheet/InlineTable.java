package railwitness.logger.sheet;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A TOML table written in one line: {@code { reading_pct = 0.015, stated_as = "limit" }}. */
final class InlineTable {
    private static final Pattern ENTRY = Pattern.compile(
            "([A-Za-z0-9_.-]+)\\s*=\\s*(\"(?:[^\"\\\\]|\\\\.)*\"|'[^']*'|\\[[^\\]]*\\]|\\{[^}]*\\}|[^,\"'{}\\[\\]]+)");

    private final Map<String, String> entries = new LinkedHashMap<>();

    /** @param literal with its braces; empty for an empty table */
    InlineTable(String literal) {
        Matcher matcher = ENTRY.matcher(literal.replaceAll("^\\s*\\{|\\}\\s*$", ""));
        while (matcher.find()) {
            entries.put(matcher.group(1), matcher.group(2).strip());
        }
    }

    String literal(String key) {
        return entries.getOrDefault(key, "");
    }

    /** An empty literal takes the key out. */
    InlineTable set(String key, String literal) {
        if (literal.isEmpty()) {
            entries.remove(key);
        } else {
            entries.put(key, literal);
        }
        return this;
    }

    /** With its braces; empty when nothing stands in it. */
    String literal() {
        return entries.isEmpty()
                ? ""
                : entries.entrySet().stream()
                        .map(entry -> entry.getKey() + " = " + entry.getValue())
                        .collect(Collectors.joining(", ", "{ ", " }"));
    }
}
