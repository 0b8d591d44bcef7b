package railwitness.logger.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Changes single values in the text of a sheet; comments, order and everything else stay as a person wrote them. */
public final class SheetEdit {
    private static final Pattern QUOTED = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"|'([^']*)'");

    private final SheetLines sheet;
    private final List<String> lines;

    public SheetEdit(String text) {
        this.sheet = new SheetLines(text);
        this.lines = sheet.all();
    }

    /** How many tables of this header there are, such as {@code [input]} or {@code [[rail]]}. */
    public int count(String header) {
        return sheet.count(header);
    }

    /** The value as it stands there; empty where the key or its table is missing. */
    public String literal(String table, int place, String key) {
        Place at = new Place(table, place, key);
        if (at.inline()) {
            String inner = literal(at.header(), place, at.inner());
            return inner.isEmpty()
                    ? literal(at.header(), place, at.inner() + "." + key)
                    : new InlineTable(inner).literal(key);
        }
        return sheet.value(at.header(), place, key)
                .map(SheetLines.Value::literal)
                .orElse("");
    }

    /** The texts of a value without their quotes; none where the key is missing or is no text. */
    public List<String> texts(String table, int place, String key) {
        List<String> all = new ArrayList<>();
        Matcher matcher = QUOTED.matcher(literal(table, place, key));
        while (matcher.find()) {
            all.add(
                    matcher.group(2) != null
                            ? matcher.group(2)
                            : matcher.group(1).replaceAll("\\\\(.)", "$1"));
        }
        return all;
    }

    /** A text without its quotes; empty where it is missing. */
    public String text(String table, int place, String key) {
        List<String> all = texts(table, place, key);
        return all.isEmpty() ? "" : all.get(0);
    }

    /** Whether a line, from 1, belongs to this table. */
    public boolean holds(String header, int place, int line) {
        int table = sheet.table(header, place);
        return table >= 0 && line > table && line <= sheet.end(table);
    }

    /** Line of a key, from 1; 0 where it is missing. */
    public int lineOf(String table, int place, String key) {
        Place at = new Place(table, place, key);
        if (!at.inline()) {
            return line(at.header(), place, key) + 1;
        }
        return literal(table, place, key).isEmpty()
                ? 0
                : Math.max(line(at.header(), place, at.inner()), line(at.header(), place, at.inner() + "." + key)) + 1;
    }

    /** Line on which a table begins, from 1; 0 where it is missing. */
    public int lineOf(String table, int place) {
        return sheet.table(new Place(table, place, "").header(), place) + 1;
    }

    /**
     * Sets a value.
     *
     * @param table its header, such as {@code [[instrument]]}, or with a table inside it written in one line: {@code
     *     [[instrument]] accuracy.voltage}
     * @param literal in TOML, quotes included; empty takes the key out
     */
    public SheetEdit set(String table, int place, String key, String literal) {
        Place at = new Place(table, place, key);
        if (!at.inline()) {
            return setPlain(at.header(), place, key, literal);
        }
        String inner = literal(at.header(), place, at.inner());
        boolean dotted = inner.isEmpty() && !literal(table, place, key).isEmpty();
        return dotted
                ? setPlain(at.header(), place, at.inner() + "." + key, literal)
                : setPlain(
                        at.header(),
                        place,
                        at.inner(),
                        new InlineTable(inner).set(key, literal).literal());
    }

    /** The comment behind a value, with its mark; empty where there is none. */
    public String comment(String table, int place, String key) {
        Place at = new Place(table, place, key);
        return sheet.value(at.header(), place, at.inline() ? at.inner() : key)
                .map(value -> value.behind().strip())
                .orElse("");
    }

    /** Takes the comment behind a value out. */
    public SheetEdit withoutComment(String table, int place, String key) {
        Place at = new Place(table, place, key);
        sheet.value(at.header(), place, at.inline() ? at.inner() : key)
                .filter(value -> value.count() == 1)
                .ifPresent(value -> lines.set(value.line(), value.before() + value.literal()));
        return this;
    }

    /** Puts a table, with the comment right above it, before the one of its kind that stands before it. */
    public SheetEdit earlier(String header, int place) {
        if (place > 0 && place < count(header)) {
            int table = sheet.table(header, place);
            int from = sheet.commented(table);
            List<String> moved = new ArrayList<>(lines.subList(from, sheet.content(table)));
            takeOut(header, place);
            moved.add("");
            lines.addAll(sheet.commented(sheet.table(header, place - 1)), moved);
        }
        return this;
    }

    private SheetEdit setPlain(String header, int place, String key, String literal) {
        Optional<SheetLines.Value> present = sheet.value(header, place, key);
        if (present.isEmpty() && !literal.isEmpty()) {
            insert(header, place, key + " = " + literal);
        }
        present.filter(value -> !value.literal().equals(literal)).ifPresent(value -> replace(value, literal));
        return this;
    }

    private void replace(SheetLines.Value value, String literal) {
        lines.subList(value.line(), value.line() + value.count()).clear();
        if (!literal.isEmpty()) {
            lines.add(value.line(), value.before() + literal + value.behind());
        }
    }

    /** What stands under a header, without it; empty where there is no such table. */
    public String body(String header, int place) {
        int table = sheet.table(header, place);
        return table < 0 ? "" : String.join("\n", lines.subList(table + 1, sheet.end(table)));
    }

    /** Adds a table behind the last of its header, or at the end. */
    public SheetEdit add(String header, String body) {
        int last = sheet.table(header, count(header) - 1);
        int end = last < 0 ? lines.size() : sheet.content(last);
        while (end > 0 && lines.get(end - 1).isBlank()) {
            end--;
        }
        List<String> added = new ArrayList<>(List.of("", header));
        added.addAll(List.of(body.split("\n", -1)));
        if (end == lines.size()) {
            added.add("");
        }
        lines.addAll(end, added);
        return this;
    }

    /** Takes a table out, with the comment right above it. */
    public SheetEdit takeOut(String header, int place) {
        int table = sheet.table(header, place);
        if (table < 0) {
            return this;
        }
        int from = sheet.commented(table);
        while (from > 0 && lines.get(from - 1).isBlank()) {
            from--;
        }
        lines.subList(from, sheet.content(table)).clear();
        return this;
    }

    /** Where a key stands: under a header, perhaps in a table inside that is written in one line. */
    private record Place(String table, int place, String key) {
        String header() {
            int blank = table.indexOf("] ");
            return blank < 0 ? table : table.substring(0, blank + 1);
        }

        boolean inline() {
            return table.contains("] ");
        }

        String inner() {
            return table.substring(table.indexOf("] ") + 2);
        }
    }

    private void insert(String header, int place, String line) {
        int table = sheet.table(header, place);
        if (table < 0) {
            while (!lines.isEmpty() && lines.get(lines.size() - 1).isBlank()) {
                lines.remove(lines.size() - 1);
            }
            lines.addAll(List.of("", header, line, ""));
            return;
        }
        lines.add(sheet.content(table), line);
    }

    private int line(String header, int place, String key) {
        return sheet.value(header, place, key).map(SheetLines.Value::line).orElse(-1);
    }

    /** The whole text. */
    public String text() {
        return String.join("\n", lines);
    }
}
