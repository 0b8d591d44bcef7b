package railwitness.logger.recording.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.drivers.sheet.TomlLexer;
import railwitness.drivers.sheet.TomlToken;

/**
 * Where everything stands in the text of a sheet. A path names a table or a value by its keys; in it, the place of one of
 * several tables, or of a list's item, is a number from 0.
 */
final class SheetMap {
    /** Deeper lists are one value: no sheet of ours has them. */
    private static final int DEEPEST = 40;

    /**
     * A value, wherever it stands: behind a key on a line of its own, in an inline table, in a list.
     *
     * @param start its key, or the value itself in a list
     * @param from where the value begins
     * @param to behind the value
     * @param table path of the header that it stands under
     * @param in the inline table or list it stands in; empty for one on a line of its own
     */
    record Value(List<Object> path, int start, int from, int to, List<Object> table, Optional<List<Object>> in) {}

    /**
     * A table that a header begins.
     *
     * @param start of the header's line
     * @param end of its last value's line or of its own, without what ends the line
     * @param next where the next header's line begins
     */
    record Table(List<Object> path, int start, int end, int next) {}

    private final String text;
    private final List<TomlToken> tokens;
    private final Map<List<Object>, Value> values = new LinkedHashMap<>();
    private final List<Table> tables = new ArrayList<>();
    private final Map<List<Object>, Integer> counts = new HashMap<>();
    private List<Object> under = List.of();
    private int at;

    SheetMap(String text) {
        this.text = text;
        this.tokens = TomlLexer.tokens(text);
        while (skip(true) != 0) {
            if (kind() == '[') {
                header();
            } else {
                pair(under, Optional.empty());
            }
            toLineEnd();
        }
    }

    private char kind() {
        return at < tokens.size() ? tokens.get(at).kind() : 0;
    }

    private int from() {
        return at < tokens.size() ? tokens.get(at).from() : text.length();
    }

    /** Passes over what counts for nothing, over the lines' ends too if wanted; answers what comes then. */
    private char skip(boolean lines) {
        while (at < tokens.size() && tokens.get(at).idle() && (lines || kind() != '\n')) {
            at++;
        }
        return kind();
    }

    private void toLineEnd() {
        while (kind() != 0 && kind() != '\n') {
            at++;
        }
        if (!tables.isEmpty()) {
            Table last = tables.remove(tables.size() - 1);
            tables.add(new Table(last.path(), last.start(), lineEnd(from()), text.length()));
        }
    }

    /** Before what ends the line. */
    int lineEnd(int position) {
        int end = text.indexOf('\n', position);
        end = end < 0 ? text.length() : end;
        return end > 0 && text.charAt(end - 1) == '\r' ? end - 1 : end;
    }

    int lineStart(int position) {
        return text.lastIndexOf('\n', position - 1) + 1;
    }

    private void header() {
        int start = lineStart(from());
        at++;
        boolean several = kind() == '[';
        at += several ? 1 : 0;
        List<Object> path = key(List.of());
        if (several) {
            path = join(path, counts.merge(path, 1, Integer::sum) - 1);
        }
        if (!tables.isEmpty()) {
            Table before = tables.remove(tables.size() - 1);
            tables.add(new Table(before.path(), before.start(), before.end(), start));
        }
        tables.add(new Table(path, start, start, text.length()));
        under = path;
    }

    /** A key of one or more parts; on the way, a table of several is the last of them. */
    private List<Object> key(List<Object> before) {
        List<Object> path = before;
        do {
            at += kind() == '.' ? 1 : 0;
            boolean string = skip(false) == TomlToken.STRING;
            if (!string && kind() != TomlToken.WORD) {
                return path;
            }
            if (counts.containsKey(path)) {
                path = join(path, counts.get(path) - 1);
            }
            String part = text.substring(from(), tokens.get(at++).to());
            path = join(path, string ? TomlLexer.texts(part).get(0) : part);
        } while (skip(false) == '.');
        return path;
    }

    private void pair(List<Object> before, Optional<List<Object>> in) {
        int start = from();
        List<Object> path = key(before);
        if (skip(false) == '=') {
            at++;
            skip(false);
            value(path, start, in);
        }
    }

    private void value(List<Object> path, int start, Optional<List<Object>> in) {
        int from = from();
        char first = kind();
        if (first == '[' || first == '{') {
            values.put(path, new Value(path, start, from, from, under, in));
            inside(path, first == '[', path.size() > DEEPEST);
        } else {
            int begin = at;
            while ("\n#,]}\0".indexOf(kind()) < 0) {
                at++;
            }
            at -= at > begin && tokens.get(at - 1).kind() == TomlToken.BLANK ? 1 : 0;
        }
        values.put(path, new Value(path, start, from, Math.max(from, from()), under, in));
    }

    private void inside(List<Object> path, boolean list, boolean tooDeep) {
        char close = list ? ']' : '}';
        at++;
        for (int open = 1, item = 0; skip(true) != 0 && open > 0; ) {
            if (kind() == close && !tooDeep) {
                at++;
                return;
            }
            int before = at;
            if (tooDeep || kind() == ',') {
                open += "[{".indexOf(kind()) >= 0 ? 1 : "]}".indexOf(kind()) >= 0 ? -1 : 0;
                at++;
            } else if (list) {
                value(join(path, item++), from(), Optional.of(path));
            } else {
                pair(path, Optional.of(path));
            }
            at += at == before ? 1 : 0;
        }
    }

    static List<Object> join(List<Object> path, Object... more) {
        List<Object> all = new ArrayList<>(path);
        all.addAll(List.of(more));
        return all;
    }

    Optional<Value> value(List<Object> path) {
        return Optional.ofNullable(values.get(path));
    }

    /** The value on a line of its own in which this one stands, or itself. */
    Value statement(Value value) {
        return value.in().map(in -> statement(values.get(in))).orElse(value);
    }

    /** What stands right in an inline table or list, in order. */
    List<Value> inside(Value value) {
        return values.values().stream()
                .filter(one -> one.in().filter(value.path()::equals).isPresent())
                .toList();
    }

    Optional<Table> table(List<Object> path) {
        return tables.stream().filter(table -> table.path().equals(path)).findFirst();
    }

    /** The last value on a line of its own whose key leads through this path. */
    Optional<Value> dotted(List<Object> path) {
        return values.values().stream()
                .filter(one -> one.in().isEmpty() && one.table().size() < path.size() && begins(path, one.path()))
                .reduce((first, second) -> second);
    }

    /** A table with the tables in it that follow it. */
    Optional<Table> whole(List<Object> path) {
        return tables.stream()
                .filter(table -> begins(path, table.path()))
                .reduce((first, second) -> first.next() == second.start()
                        ? new Table(path, first.start(), second.end(), second.next())
                        : first)
                .filter(table -> table(path).isPresent());
    }

    static boolean begins(List<Object> begin, List<Object> path) {
        return path.size() >= begin.size() && path.subList(0, begin.size()).equals(begin);
    }

    /** Whether anything stands there. */
    boolean has(List<Object> path) {
        return value(path).isPresent()
                || dotted(path).isPresent()
                || tables.stream().anyMatch(table -> begins(path, table.path()));
    }
}
