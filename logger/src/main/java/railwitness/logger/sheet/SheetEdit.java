package railwitness.logger.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Changes single values in the text of a sheet; comments, order and everything else stay as a person wrote them. */
public final class SheetEdit {
    private static final Pattern HEADER = Pattern.compile("^\\s*(\\[\\[?[^\\]]+\\]\\]?)\\s*(#.*)?$");
    private static final Pattern VALUE = Pattern.compile(
            "^(\\s*)([A-Za-z0-9_.-]+)(\\s*=\\s*)(\"(?:[^\"\\\\]|\\\\.)*\"|'[^']*'|\\[[^\\]]*\\]|[^#\"'\\[\\s][^#]*?)(\\s*(?:#.*)?)$");

    private final List<String> lines;

    public SheetEdit(String text) {
        this.lines = new ArrayList<>(List.of(text.split("\n", -1)));
    }

    /** How many tables of this header there are, such as {@code [input]} or {@code [[rail]]}. */
    public int count(String header) {
        return (int) lines.stream().filter(line -> isHeader(line, header)).count();
    }

    /** The value as it stands there; empty where the key or its table is missing. */
    public String literal(String header, int place, String key) {
        int line = line(header, place, key);
        if (line < 0) {
            return "";
        }
        Matcher matcher = VALUE.matcher(lines.get(line));
        return matcher.matches() ? matcher.group(4).strip() : "";
    }

    /** Line of a key, from 1; 0 where it is missing. */
    public int lineOf(String header, int place, String key) {
        return line(header, place, key) + 1;
    }

    /**
     * Sets a value.
     *
     * @param literal in TOML, quotes included; empty takes the key out
     */
    public SheetEdit set(String header, int place, String key, String literal) {
        int line = line(header, place, key);
        if (line >= 0 && literal.isEmpty()) {
            lines.remove(line);
        } else if (line >= 0) {
            Matcher matcher = VALUE.matcher(lines.get(line));
            if (matcher.matches()) {
                lines.set(line, matcher.group(1) + key + matcher.group(3) + literal + matcher.group(5));
            }
        } else if (!literal.isEmpty()) {
            insert(header, place, key + " = " + literal);
        }
        return this;
    }

    private void insert(String header, int place, String line) {
        int table = table(header, place);
        if (table < 0) {
            while (!lines.isEmpty() && lines.get(lines.size() - 1).isBlank()) {
                lines.remove(lines.size() - 1);
            }
            lines.addAll(List.of("", header, line, ""));
            return;
        }
        int end = end(table);
        while (end > table + 1
                && (lines.get(end - 1).isBlank() || lines.get(end - 1).startsWith("#"))) {
            end--;
        }
        lines.add(end, line);
    }

    private int line(String header, int place, String key) {
        int table = table(header, place);
        if (table < 0) {
            return -1;
        }
        for (int i = table + 1; i < end(table); i++) {
            Matcher matcher = VALUE.matcher(lines.get(i));
            if (matcher.matches() && matcher.group(2).equals(key)) {
                return i;
            }
        }
        return -1;
    }

    private int table(String header, int place) {
        int seen = 0;
        for (int i = 0; i < lines.size(); i++) {
            if (isHeader(lines.get(i), header) && seen++ == place) {
                return i;
            }
        }
        return -1;
    }

    private int end(int table) {
        for (int i = table + 1; i < lines.size(); i++) {
            if (HEADER.matcher(lines.get(i)).matches()) {
                return i;
            }
        }
        return lines.size();
    }

    private static boolean isHeader(String line, String header) {
        Matcher matcher = HEADER.matcher(line);
        return matcher.matches() && matcher.group(1).replace(" ", "").equals(header);
    }

    /** The whole text. */
    public String text() {
        return String.join("\n", lines);
    }
}
