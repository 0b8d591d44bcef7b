package railwitness.logger.recording.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A valid sheet drawn by chance in every form that TOML has, with the places of its values as they were written. */
final class DrawnSheet {
    /** A value as it was written. */
    record Spot(String table, int place, String key, int from, int to) {}

    private static final List<String> COMMENTS = List.of(
            "# engine \"off",
            "# see ] and } = 3, 'x",
            "#",
            "# [rail]",
            "# \u00b5 \u20ac # twice",
            "#\t= \\ \"\"\" '''");
    private static final List<String> SCALARS = List.of(
            "13.8",
            "-1_000",
            "+2.5e-3",
            "0x1F",
            "true",
            "false",
            "inf",
            "-nan",
            "2026-05-11",
            "2026-05-11T08:30:00Z",
            "2026-05-11 08:30:00.5",
            "08:30:00",
            "\"\"",
            "''",
            "\"a # b\"",
            "\"\\u00b5F \\\" ; ] } \\\\\"",
            "\"tab\\tand\\U0001F50B\"",
            "'C:\\ports\\# \"one\"'",
            "\"[rail]\"",
            "\"x = 3, y = '\"");
    private static final List<String> SPREAD = List.of(
            "\"\"\"@two \"\" lines # no comment@[rail]@a = 1\\@   end\\u00b5\"\"\"",
            "'''@it's # [x] \"\"\"@b = 2@'''",
            "\"\"\"one \\\"\"\" \\\\\"\"\"",
            "\"\"\"@ends in quotes\"\"\"\"\"");

    private final Random random;
    private final String lineEnd;
    private final StringBuilder text = new StringBuilder();
    private final List<Spot> spots = new ArrayList<>();

    DrawnSheet(long seed) {
        random = new Random(seed);
        lineEnd = chance(3) ? "\r\n" : "\n";
        text.append(chance(4) ? "\uFEFF" : "");
        List<String> names = new ArrayList<>(List.of("input", "core-2", "77", "filter", "rail", "stage"));
        java.util.Collections.shuffle(names, random);
        // what has no header comes first
        for (String name : names.subList(0, 2)) {
            if (name.equals("rail") || name.equals("stage")) {
                inlineTables(name);
            } else if (chance(2)) {
                dotted("[" + name + "]", 0, part(name), 1 + random.nextInt(3));
            } else {
                spot(part(name) + gap() + "=" + gap(), "[" + name + "]", 0, 0);
                lineEnd();
            }
        }
        for (String name : names.subList(2, 6)) {
            boolean several = name.equals("rail") || name.equals("stage");
            for (int place = 0; place < (several ? random.nextInt(4) : 1); place++) {
                table(name, place, several);
            }
        }
        if (chance(3)) {
            text.setLength(text.toString().stripTrailing().length());
            if (text.toString().endsWith("=")) {
                throw new IllegalStateException("cut a value away");
            }
        }
    }

    String text() {
        return text.toString();
    }

    List<Spot> spots() {
        return spots;
    }

    private boolean chance(int of) {
        return random.nextInt(of) == 0;
    }

    private <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private String gap() {
        return one(List.of("", " ", "\t", "   ", " "));
    }

    private String part(String name) {
        return one(List.of(name, name, "\"" + name + "\"", "'" + name + "'"));
    }

    private void lineEnd() {
        text.append(gap()).append(chance(3) ? one(COMMENTS) : "").append(lineEnd);
        while (chance(3)) {
            text.append(gap()).append(chance(2) ? one(COMMENTS) : "").append(lineEnd);
        }
    }

    private void table(String name, int place, boolean several) {
        String open = several ? "[[" : "[";
        String close = several ? "]]" : "]";
        text.append(gap())
                .append(open)
                .append(gap())
                .append(part(name))
                .append(gap())
                .append(close);
        lineEnd();
        String header = open + name + close;
        int count = random.nextInt(4);
        for (int k = 0; k < count; k++) {
            pair(header, place, key(k), 2);
            lineEnd();
        }
        if (chance(3)) {
            dotted(header + " lim.up", place, part("lim") + gap() + "." + gap() + part("up"), 1 + random.nextInt(2));
        } else if (chance(3)) {
            spot("accuracy.volt" + gap() + "=" + gap(), header + " accuracy.volt", place, 0);
            lineEnd();
        } else if (chance(2)) {
            text.append(gap()).append("[").append(part(name)).append(gap()).append(".deep.er]");
            lineEnd();
            pair(header + " deep.er", place, "x", 2);
            lineEnd();
        }
    }

    private String key(int k) {
        return one(List.of("nominal_V", "k" + k, "a b", "q#", "x.y", "1", "\u00b5F", "=")) + k;
    }

    private void dotted(String table, int place, String before, int count) {
        for (int k = 0; k < count; k++) {
            text.append(gap()).append(before).append(gap()).append(".").append(gap());
            pair(table, place, key(k), 2);
            lineEnd();
        }
    }

    private void inlineTables(String name) {
        text.append(part(name)).append(gap()).append("=").append(gap()).append("[");
        int count = random.nextInt(4);
        for (int place = 0; place < count; place++) {
            text.append(chance(2) ? lineEnd : gap());
            if (chance(4)) {
                text.append(one(COMMENTS)).append(lineEnd);
            }
            spot("", "[[" + name + "]]", place, 0);
            text.append(gap()).append(place + 1 < count || chance(2) ? "," : "");
        }
        text.append(chance(2) ? lineEnd : gap()).append("]");
        lineEnd();
    }

    /** An inline table whose keys are spots. */
    private void spot(String before, String table, int place, int least) {
        text.append(before).append("{").append(gap());
        int count = least + random.nextInt(4);
        for (int k = 0; k < count; k++) {
            pair(table, place, key(k), 1);
            // the parser wants a blank between a date and what ends it
            text.append(" ").append(k + 1 < count ? "," + gap() : "");
        }
        text.append("}");
    }

    private void pair(String table, int place, String key, int depth) {
        boolean bare = key.matches("[A-Za-z0-9_-]+") && !chance(4);
        text.append(bare ? key : chance(2) ? "\"" + key + "\"" : "'" + key + "'");
        text.append(gap()).append("=").append(gap());
        int from = text.length();
        text.append(value(depth));
        spots.add(new Spot(table, place, key, from, text.length()));
    }

    private String value(int depth) {
        if (depth > 0 && chance(3)) {
            return list(depth);
        }
        if (depth > 1 && chance(8)) {
            return "{ a = " + value(0) + " , \"b c\" = " + value(0) + " , d.e = 1 }";
        }
        return chance(6) ? one(SPREAD).replace("@", lineEnd) : one(SCALARS);
    }

    private String list(int depth) {
        StringBuilder list = new StringBuilder("[");
        int count = random.nextInt(4);
        boolean spread = chance(2);
        for (int k = 0; k < count; k++) {
            list.append(spread ? lineEnd + gap() : gap());
            list.append(spread && chance(3) ? one(COMMENTS) + lineEnd : "");
            list.append(value(depth - 1)).append(" ").append(k + 1 < count ? "," : "");
        }
        return list.append(spread ? lineEnd : "").append("]").toString();
    }
}
