package railwitness.drivers.instrument;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.drivers.instrument.DialectTrial.Tried;

/**
 * A dialect file to begin with, from a dialect's own text and what an instrument answered: its identity is the
 * instrument's, and each line whose question was not answered as it must be is marked. What may be left out is commented
 * out; what a run needs stays, to be put right.
 */
public final class DialectDraft {
    private static final List<String> LEFT_OUT = List.of("error", "over_volts", "over_amps", "otherwise", ".state ");

    private DialectDraft() {}

    /** @param text the dialect that was tried, as it stands in its file */
    public static String of(String text, List<Tried> tried) {
        List<String> lines = new ArrayList<>();
        lines.add("# A file to begin with: what is marked 'not answered' must be put right or left out.");
        String part = "";
        boolean dropped = false;
        for (String line : text.lines().toList()) {
            String bare = line.strip();
            if (bare.startsWith("[")) {
                part = bare.replaceAll("[\\[\\]]", "").replaceAll("\\s*#.*", "").strip();
                dropped = false;
            }
            String now = part;
            Optional<Tried> failed = tried.stream()
                    .filter(one -> !one.holds() && isOf(one, now, bare))
                    .findFirst();
            if (bare.startsWith("identity") && now.isEmpty()) {
                lines.add(identity(tried).orElse(line));
            } else if (failed.isPresent() && mayBeLeftOut(failed.get())) {
                dropped = now.endsWith("state");
                lines.add("# not answered: " + line);
            } else if (failed.isPresent()) {
                lines.add(line + "   # not answered"
                        + (failed.get().needed() ? ": a run needs it" : ": it is then not read back"));
            } else if (dropped && !bare.isEmpty() && !bare.startsWith("#")) {
                lines.add("# " + line);
            } else {
                lines.add(line);
            }
        }
        return withoutEmptyStates(lines);
    }

    private static boolean mayBeLeftOut(Tried one) {
        return LEFT_OUT.stream().anyMatch(one.key()::contains);
    }

    /** A state whose question is left out has nothing left: its heading goes too. */
    private static String withoutEmptyStates(List<String> lines) {
        List<String> kept = new ArrayList<>(lines);
        for (int i = 0; i + 1 < kept.size(); i++) {
            if (kept.get(i).strip().matches("\\[\\[\\w+\\.state]].*")
                    && kept.get(i + 1).startsWith("# not answered")) {
                kept.set(i, "# " + kept.get(i));
            }
        }
        return String.join("\n", kept) + "\n";
    }

    private static boolean isOf(Tried one, String part, String line) {
        if (part.endsWith(".state")) {
            return line.startsWith("ask")
                    && one.key().startsWith(part + " ")
                    && line.contains("\"" + one.sent() + "\"");
        }
        if (!one.key().startsWith(part + ".") || part.isEmpty()) {
            return false;
        }
        String key = one.key().substring(part.length() + 1).replaceAll("\\..*", "");
        return line.matches(key + "\\s*=.*");
    }

    private static Optional<String> identity(List<Tried> tried) {
        return tried.stream()
                .filter(one -> one.key().equals("identity") && !one.reply().isBlank())
                .map(one -> Identity.of(one.reply()))
                .map(who -> "identity = '(?s)" + quoted(who.maker()) + "\\s*,\\s*" + quoted(who.model()) + ".*'")
                .findFirst();
    }

    private static String quoted(String name) {
        return name.replaceAll("[^A-Za-z0-9 ]", ".");
    }
}
