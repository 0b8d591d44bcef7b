package railwitness.logger.reporting.comparing;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.analysis.design.FigureName;
import railwitness.logger.reporting.findings.ShownUnit;

/** What changed, as one would tell a colleague. */
final class ChangeWords {
    private static final int MOST = 4;

    private final Comparison comparison;
    private final Matter matter;

    ChangeWords(Comparison comparison) {
        this.comparison = comparison;
        this.matter = new Matter(comparison);
    }

    /** One figure that moved by so many times what matters. */
    private record Moved(Compared figure, Change change, double times) {}

    /** A sentence: what moved by more than matters, the furthest first, and that nothing else did. */
    String against(int later) {
        List<Moved> moved = comparison.figures().stream()
                .flatMap(figure -> figure.changes().get(later).stream()
                        .filter(change -> matter.matters(figure, change))
                        .map(change -> new Moved(
                                figure,
                                change,
                                Math.abs(change.difference().value())
                                        / Math.max(
                                                Double.MIN_NORMAL,
                                                matter.from(figure).orElse(1)))))
                .sorted(Comparator.comparingDouble(Moved::times).reversed())
                .toList();
        if (moved.isEmpty()) {
            return "Nothing moved by more than matters.";
        }
        String told = moved.stream().limit(MOST).map(one -> words(one, later)).collect(Collectors.joining("; "));
        int more = moved.size() - MOST;
        return Character.toUpperCase(told.charAt(0)) + told.substring(1) + "; "
                + (more > 0
                        ? more + " more moved by more than matters (below)"
                        : "nothing else moved by more than matters")
                + ".";
    }

    private static String words(Moved moved, int later) {
        Compared shown = shown(moved.figure());
        double from = shown.values().get(0).orElseThrow().value();
        double to = shown.values().get(later).orElseThrow().value();
        return shown.name()
                + shown.rail().map(rail -> " of the " + rail + " rail").orElse("")
                + (Math.abs(to) < Math.abs(from) ? " fell from " : " rose from ")
                + Print.value(shown, 0) + " to " + Print.value(shown, later)
                + (shown.unit().isEmpty() ? "" : " " + shown.unit());
    }

    /** In the unit in which people read it. */
    static Compared shown(Compared figure) {
        ShownUnit unit = Optional.of(figure.name())
                .map(FigureName::of)
                .map(ShownUnit::of)
                .orElseThrow();
        return figure.scaled(unit.factor(), unit.symbol());
    }

    /** How many of the differences against the first seem real by chance alone, on average. */
    String chance(int later) {
        List<Change> judged = comparison.figures().stream()
                .flatMap(figure -> figure.changes().get(later).stream())
                .filter(change -> change.answer() != Answer.NOT_KNOWN)
                .toList();
        long real =
                judged.stream().filter(change -> change.answer() == Answer.REAL).count();
        return String.format(
                Locale.ROOT,
                "%d of %d differences are real; were nothing changed at all, %.1f of %d would seem so by chance (5 %%)."
                        + " Figures of the same readings move together, so that one accident can show in several.",
                real,
                judged.size(),
                0.05 * judged.size(),
                judged.size());
    }

    /** The same for control charts: three standard deviations, and Grubbs' test, for each figure. */
    String chanceOfSignals() {
        int units = comparison.sessions().size();
        double each = units * 0.0027 + SisterChart.RISK;
        return String.format(
                Locale.ROOT,
                "Of %d units alike in %d figures, about %.1f signals come by chance.",
                units,
                comparison.charts().size(),
                each * comparison.charts().size());
    }
}
