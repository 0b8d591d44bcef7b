package railwitness.logger.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The lines of a sheet: where its tables begin and end, and on which lines a key and its value stand. From 0. */
final class SheetLines {
    private static final Pattern HEADER = Pattern.compile("^\\s*(\\[\\[?[^\\]]+\\]\\]?)\\s*(#.*)?$");
    private static final Pattern VALUE = Pattern.compile(
            "^(\\s*)([A-Za-z0-9_.-]+)(\\s*=\\s*)(\"(?:[^\"\\\\]|\\\\.)*\"|'[^']*'|\\[[^\\]]*\\]|[^#\"'\\[\\s][^#]*?)(\\s*(?:#.*)?)$");
    private static final Pattern LIST = Pattern.compile("^(\\s*)([A-Za-z0-9_.-]+)(\\s*=\\s*)(\\[.*)$");

    private final List<String> lines;

    SheetLines(String text) {
        this.lines = new ArrayList<>(List.of(text.split("\n", -1)));
    }

    /**
     * A key with its value.
     *
     * @param line the first of them
     * @param count how many lines; more than one for a list that is spread over several
     * @param before indent, key and equals sign
     * @param literal the value
     * @param behind what follows it: blanks and a comment
     */
    record Value(int line, int count, String before, String literal, String behind) {}

    /** The lines themselves, to be changed. */
    List<String> all() {
        return lines;
    }

    /** Tables of this header. */
    int count(String header) {
        return (int) lines.stream().filter(line -> isHeader(line, header)).count();
    }

    /** Line of a table's header; -1 where there is no such table. */
    int table(String header, int place) {
        int seen = 0;
        for (int i = 0; i < lines.size(); i++) {
            if (isHeader(lines.get(i), header) && seen++ == place) {
                return i;
            }
        }
        return -1;
    }

    private static boolean isHeader(String line, String header) {
        Matcher matcher = HEADER.matcher(line);
        return matcher.matches() && matcher.group(1).replace(" ", "").equals(header);
    }

    /** The next table's header, or behind the last line. */
    int end(int table) {
        for (int i = table + 1; i < lines.size(); i++) {
            if (HEADER.matcher(lines.get(i)).matches()) {
                return i;
            }
        }
        return lines.size();
    }

    /** Behind the last line that belongs to a table: what comes after it is the next table's, or blank. */
    int content(int table) {
        int end = end(table);
        while (end > table + 1
                && (lines.get(end - 1).isBlank() || lines.get(end - 1).startsWith("#"))) {
            end--;
        }
        return end;
    }

    /** The first line of the comment right above a table, or its header. */
    int commented(int table) {
        int from = table;
        while (from > 0 && lines.get(from - 1).startsWith("#")) {
            from--;
        }
        return from;
    }

    /** Where a key stands; empty where it or its table is missing. */
    Optional<Value> value(String header, int place, String key) {
        int table = table(header, place);
        int end = table < 0 ? 0 : end(table);
        for (int i = Math.max(0, table + 1); i < end; i++) {
            Matcher matcher = VALUE.matcher(lines.get(i));
            if (matcher.matches() && matcher.group(2).equals(key)) {
                String before = matcher.group(1) + matcher.group(2) + matcher.group(3);
                return Optional.of(new Value(i, 1, before, matcher.group(4).strip(), matcher.group(5)));
            }
            Matcher list = LIST.matcher(lines.get(i));
            if (!matcher.matches() && list.matches() && list.group(2).equals(key)) {
                return Optional.of(spread(i, list.group(1) + key + list.group(3), list.group(4)));
            }
        }
        return Optional.empty();
    }

    /** A list over several lines, read as if it stood on one; comments between its values are passed over. */
    private Value spread(int line, String before, String first) {
        StringBuilder literal = new StringBuilder(bare(first));
        int count = 1;
        while (literal.indexOf("]") < 0 && line + count < lines.size()) {
            literal.append(' ').append(bare(lines.get(line + count++)));
        }
        return new Value(line, count, before, literal.toString().replaceAll("\\s+", " "), "");
    }

    private static String bare(String line) {
        return line.replaceFirst("#.*$", "").strip();
    }
}
