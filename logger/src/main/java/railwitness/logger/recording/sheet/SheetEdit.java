package railwitness.logger.recording.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.drivers.sheet.TomlLexer;
import railwitness.drivers.sheet.TomlToken;

/**
 * Changes single values in the text of a sheet; comments, order and everything else stay as a person wrote them. Tables
 * are named by their header, such as {@code [input]} or {@code [[rail]]}, or with a table inside it: {@code [[instrument]]
 * accuracy.voltage}; in which of its forms TOML has it there does not matter.
 */
public final class SheetEdit {
    private String text;
    private SheetMap map;

    public SheetEdit(String text) {
        become(text);
    }

    private SheetEdit become(String changed) {
        text = changed;
        map = new SheetMap(changed);
        return this;
    }

    /** The whole text. */
    public String text() {
        return text;
    }

    private static List<Object> path(String table, int place) {
        int inner = table.indexOf("] ");
        String header = inner < 0 ? table : table.substring(0, inner + 1);
        List<Object> path = new ArrayList<>(
                List.of((Object[]) header.replaceAll("^\\[+|\\]+$", "").split("\\.")));
        if (header.startsWith("[[")) {
            path.add(place);
        }
        return inner < 0
                ? path
                : SheetMap.join(path, (Object[]) table.substring(inner + 2).split("\\."));
    }

    private Optional<SheetMap.Value> value(String table, int place, String key) {
        return map.value(SheetMap.join(path(table, place), key));
    }

    /** How many tables of this header there are. */
    public int count(String header) {
        int count = 0;
        while (map.has(path(header, count))) {
            if (++count == 1 && !header.startsWith("[[")) {
                break;
            }
        }
        return count;
    }

    /** The value as it stands there, on one line; empty where the key or its table is missing. */
    public String literal(String table, int place, String key) {
        return value(table, place, key).map(this::literal).orElse("");
    }

    private String literal(SheetMap.Value value) {
        String whole = text.substring(value.from(), value.to());
        return whole.indexOf('\n') < 0 ? whole : onOneLine(whole);
    }

    private static String onOneLine(String whole) {
        StringBuilder line = new StringBuilder();
        boolean apart = false;
        for (TomlToken token : TomlLexer.tokens(whole)) {
            if (!token.idle()) {
                line.append(apart ? " " : "").append(whole, token.from(), token.to());
            }
            apart = token.idle();
        }
        return line.toString();
    }

    /** The texts of a value without their quotes; none where the key is missing or is no text. */
    public List<String> texts(String table, int place, String key) {
        return TomlLexer.texts(literal(table, place, key));
    }

    /** A text without its quotes; empty where it is missing. */
    public String text(String table, int place, String key) {
        return texts(table, place, key).stream().findFirst().orElse("");
    }

    private int line(int position) {
        return 1
                + (int) text.substring(0, position)
                        .chars()
                        .filter(c -> c == '\n')
                        .count();
    }

    /** Whether a line, from 1, belongs to this table. */
    public boolean holds(String header, int place, int line) {
        List<Object> path = path(header, place);
        return map.whole(path)
                        .filter(table ->
                                line >= line(table.start()) && line <= line(Math.max(table.start(), table.next() - 1)))
                        .isPresent()
                || map.value(path)
                        .filter(value -> line >= line(value.start()) && line <= line(value.to()))
                        .isPresent();
    }

    /** Line of a key, from 1; 0 where it is missing. */
    public int lineOf(String table, int place, String key) {
        return value(table, place, key).map(value -> line(value.start())).orElse(0);
    }

    /** Line on which a table begins, from 1, or the one it is in; 0 where there is neither. */
    public int lineOf(String table, int place) {
        List<Object> path = path(table, place);
        return map.value(path)
                .map(SheetMap.Value::start)
                .or(() -> map.table(path).map(SheetMap.Table::start))
                .or(() -> map.dotted(path).map(SheetMap.Value::start))
                .map(this::line)
                .orElseGet(() -> table.contains("] ") ? lineOf(table.substring(0, table.indexOf("] ") + 1), place) : 0);
    }

    /**
     * Sets a value.
     *
     * @param literal in TOML, on one line, quotes included; empty takes the key out, and a table written in one line that
     *     is empty then
     */
    public SheetEdit set(String table, int place, String key, String literal) {
        List<Object> path = SheetMap.join(path(table, place), key);
        Optional<SheetMap.Value> value = map.value(path);
        if (value.isEmpty() || literal(value.get()).equals(literal)) {
            return value.isPresent() || literal.isEmpty() ? this : insert(path, table, literal);
        }
        return literal.isEmpty()
                ? remove(value.get())
                : replace(value.get().from(), value.get().to(), literal);
    }

    private SheetEdit replace(int from, int to, String with) {
        return become(text.substring(0, from) + with + text.substring(to));
    }

    private SheetEdit remove(SheetMap.Value value) {
        if (value.in().isEmpty()) {
            return replace(map.lineStart(value.start()), afterLine(value.to()), "");
        }
        SheetMap.Value around = map.value(value.in().get()).orElseThrow();
        List<SheetMap.Value> all = map.inside(around);
        int at = all.indexOf(value);
        if (all.size() == 1) {
            return around.path().get(around.path().size() - 1) instanceof Integer
                    ? replace(value.start(), value.to(), "")
                    : remove(around);
        }
        return at == 0
                ? replace(value.start(), all.get(1).start(), "")
                : replace(all.get(at - 1).to(), value.to(), "");
    }

    /** Behind what ends the line. */
    private int afterLine(int position) {
        int end = text.indexOf('\n', position);
        return end < 0 ? text.length() : end + 1;
    }

    /** Puts a key into the innermost table of its path that is there, in the form in which that stands. */
    private SheetEdit insert(List<Object> path, String table, String literal) {
        for (int depth = path.size() - 1; depth > 0; depth--) {
            List<Object> known = path.subList(0, depth);
            String pair = pair(path.subList(depth, path.size()), literal);
            Optional<SheetMap.Value> inline = map.value(known);
            if (inline.isPresent()) {
                return into(inline.get(), pair);
            }
            if (map.table(known).isPresent()) {
                return line(end(map.table(known).get()), pair);
            }
            Optional<SheetMap.Value> dotted = map.dotted(known);
            if (dotted.isPresent()) {
                String before = keys(known.subList(dotted.get().table().size(), depth));
                return line(map.lineEnd(dotted.get().to()), before + "." + pair);
            }
        }
        String header = table.contains("] ") ? table.substring(0, table.indexOf("] ") + 1) : table;
        int depth = header.startsWith("[[") ? 2 : 1;
        return add(header, pair(path.subList(depth, path.size()), literal));
    }

    private static String keys(List<Object> path) {
        return path.stream().map(part -> TomlLexer.key(part.toString())).collect(Collectors.joining("."));
    }

    private static String pair(List<Object> keys, String literal) {
        int last = keys.size() - 1;
        String pair = keys(keys.subList(last, last + 1)) + " = " + literal;
        return last == 0 ? pair : keys(keys.subList(0, last)) + " = { " + pair + " }";
    }

    /** Behind the last item of a list or table in one line. */
    private SheetEdit into(SheetMap.Value around, String item) {
        List<SheetMap.Value> all = map.inside(around);
        return all.isEmpty()
                ? replace(around.from() + 1, around.to() - 1, " " + item + " ")
                : replace(all.get(all.size() - 1).to(), all.get(all.size() - 1).to(), ", " + item);
    }

    private String lineEnd() {
        return text.contains("\r\n") ? "\r\n" : "\n";
    }

    private SheetEdit line(int end, String line) {
        return replace(end, end, lineEnd() + line);
    }

    /** Behind the last line that belongs to a table: what comes after it is the next table's, or blank. */
    private int end(SheetMap.Table table) {
        int end = table.next();
        while (end > table.end()) {
            int start = map.lineStart(end - 1);
            String line = text.substring(start, end);
            if (start > table.end() && (line.isBlank() || line.startsWith("#"))) {
                end = start;
            } else {
                return map.lineEnd(end - (line.endsWith("\n") ? 1 : 0));
            }
        }
        return table.end();
    }

    /** The first line of the comment right above a table, or its header. */
    private int commented(SheetMap.Table table) {
        int from = table.start();
        while (from > 0 && text.startsWith("#", map.lineStart(from - 1))) {
            from = map.lineStart(from - 1);
        }
        return from;
    }

    /** The comment behind a value, with its mark; empty where there is none. */
    public String comment(String table, int place, String key) {
        return value(table, place, key)
                .map(map::statement)
                .map(value ->
                        text.substring(value.to(), map.lineEnd(value.to())).strip())
                .orElse("");
    }

    /** Takes the comment behind a value out. */
    public SheetEdit withoutComment(String table, int place, String key) {
        return value(table, place, key)
                .map(map::statement)
                .map(value -> replace(value.to(), map.lineEnd(value.to()), ""))
                .orElse(this);
    }

    /** A sheet that has this table only; empty where there is none. */
    String alone(String header, int place) {
        List<Object> path = path(header, place);
        return map.value(path)
                .map(value -> keys(path.subList(0, 1)) + " = [" + text.substring(value.from(), value.to()) + "]")
                .or(() -> map.whole(path).map(table -> text.substring(table.start(), table.next())))
                .orElse("");
    }

    /** Puts a table, with the comment right above it, before the one of its kind that stands before it. */
    public SheetEdit earlier(String header, int place) {
        Optional<SheetMap.Value> item = map.value(path(header, place));
        Optional<SheetMap.Value> before = map.value(path(header, place - 1));
        if (item.isPresent() && before.isPresent()) {
            String moved = text.substring(item.get().from(), item.get().to());
            return replace(
                            item.get().from(),
                            item.get().to(),
                            text.substring(before.get().from(), before.get().to()))
                    .replace(before.get().from(), before.get().to(), moved);
        }
        Optional<SheetMap.Table> table = map.whole(path(header, place));
        if (place > 0 && table.isPresent()) {
            String moved = text.substring(commented(table.get()), end(table.get()));
            takeOut(header, place);
            int there = commented(map.whole(path(header, place - 1)).orElseThrow());
            replace(there, there, moved + lineEnd() + lineEnd());
        }
        return this;
    }

    /** Adds a table behind the last of its header, or at the end. */
    public SheetEdit add(String header, String body) {
        Optional<SheetMap.Value> list = map.value(path(header, 0).subList(0, 1)).filter(one -> header.startsWith("[["));
        if (list.isPresent()) {
            return into(list.get(), body.lines().collect(Collectors.joining(", ", "{ ", " }")));
        }
        int end = map.whole(path(header, count(header) - 1))
                .map(this::end)
                .orElse(text.stripTrailing().length());
        String last = end >= text.stripTrailing().length() ? lineEnd() : "";
        int to = last.isEmpty() ? end : text.length();
        return replace(end, to, lineEnd() + lineEnd() + header + lineEnd() + body.replace("\n", lineEnd()) + last);
    }

    /** Takes a table out, with the comment right above it. */
    public SheetEdit takeOut(String header, int place) {
        Optional<SheetMap.Value> item = map.value(path(header, place));
        if (item.isPresent()) {
            return remove(item.get());
        }
        return map.whole(path(header, place))
                .map(table -> {
                    int from =
                            text.substring(0, commented(table)).stripTrailing().length();
                    return replace(from, end(table), "");
                })
                .orElse(this);
    }
}
