package railwitness.logger.campaign;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** A text with a few things wrong, drawn by chance: what a broken disk, an editor or an ill will makes of a file. */
final class Mutation {
    private static final List<String> STRANGE = List.of(
            "\"",
            "'",
            "\"\"\"",
            "'''",
            "[",
            "]",
            "{",
            "}",
            "[[",
            "=",
            ",",
            ".",
            "#",
            "\n",
            "\r",
            "\t",
            "\0",
            "\u202E",
            "\uFEFF",
            "\\u0000",
            "\\",
            "1e308",
            "-1e308",
            "nan",
            "inf",
            "1e-320",
            "9223372036854775808",
            "-0",
            "0",
            "-1",
            "true",
            "2026-05-11",
            "\u00b5",
            "\uD83D\uDD0B",
            "[[[[[[[[[[",
            "a.b.c.d",
            "\"x\"",
            ";",
            "1,5",
            "e",
            "E9",
            "overload",
            "missing");

    private Mutation() {}

    static String of(String text, Random random) {
        StringBuilder changed = new StringBuilder(text);
        int count = 1 + random.nextInt(4);
        for (int k = 0; k < count && changed.length() > 2; k++) {
            int from = random.nextInt(changed.length());
            int to = Math.min(changed.length(), from + 1 + random.nextInt(random.nextInt(8) == 0 ? 400 : 6));
            String strange = STRANGE.get(random.nextInt(STRANGE.size()));
            switch (random.nextInt(6)) {
                case 0 -> changed.delete(from, to);
                case 1 -> changed.insert(from, strange);
                case 2 -> changed.replace(from, to, strange);
                case 3 -> changed.insert(from, changed.substring(from, to));
                case 4 -> number(changed, from, strange);
                default -> changed.setLength(random.nextInt(5) == 0 ? from : changed.length());
            }
        }
        return changed.toString();
    }

    /** A table in which a few cells or rows are not as they were, so that most of it can still be read. */
    static String ofTable(String table, Random random) {
        List<String> rows = new ArrayList<>(table.lines().toList());
        int count = 1 + random.nextInt(3);
        for (int k = 0; k < count && rows.size() > 3; k++) {
            int row = 1 + random.nextInt(rows.size() - 1);
            switch (random.nextInt(8)) {
                case 0 -> rows.remove(row);
                case 1 -> rows.add(row, rows.get(row));
                case 2 -> Collections.swap(rows, row, 1 + random.nextInt(rows.size() - 1));
                default -> rows.set(row, cell(rows.get(row), random));
            }
        }
        return String.join("\n", rows) + "\n";
    }

    private static String cell(String row, Random random) {
        String[] cells = row.split(",", -1);
        int at = random.nextInt(cells.length);
        cells[at] = switch (random.nextInt(10)) {
            case 0 -> "";
            case 1 -> "-" + cells[at];
            case 2 -> cells[at] + random.nextInt(10);
            case 3 -> " " + cells[at] + " ";
            case 4 -> "overload";
            case 5 -> "missing: no answer";
            case 6 -> cells[at] + "e-1";
            case 7 -> String.valueOf(random.nextInt(60));
            case 8 -> cells[at].replaceFirst("[0-9]", String.valueOf(random.nextInt(10)));
            default -> STRANGE.get(random.nextInt(STRANGE.size()));
        };
        return String.join(",", cells);
    }

    /** The next number becomes something else. */
    private static void number(StringBuilder text, int from, String strange) {
        int begin = from;
        while (begin < text.length() && !Character.isDigit(text.charAt(begin))) {
            begin++;
        }
        int end = begin;
        while (end < text.length() && "0123456789.eE".indexOf(text.charAt(end)) >= 0) {
            end++;
        }
        text.replace(begin, end, strange);
    }
}
