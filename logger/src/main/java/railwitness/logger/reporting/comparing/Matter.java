package railwitness.logger.reporting.comparing;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.verdict.Limit;
import railwitness.analysis.verdict.Requirement;

/**
 * From which size on a change matters, whether real or not: a share of what a requirement on the figure allows, or of the
 * first value where nothing is asked.
 */
public final class Matter {
    /** Of what is allowed (common practice, no source). */
    public static final double SHARE_OF_THE_LIMIT = 0.1;

    /** Of the first value, where nothing is asked (common practice, no source). */
    public static final double SHARE_OF_THE_VALUE = 0.05;

    private final Comparison comparison;

    public Matter(Comparison comparison) {
        this.comparison = comparison;
    }

    /** In the figure's unit; empty where nothing is asked and there is no first value. */
    public OptionalDouble from(Compared figure) {
        Optional<Limit> limit = requirement(figure).map(Requirement::limit);
        if (limit.isPresent()) {
            return OptionalDouble.of(SHARE_OF_THE_LIMIT * span(limit.get(), figure));
        }
        return figure.values().get(0).isPresent()
                ? OptionalDouble.of(SHARE_OF_THE_VALUE
                        * Math.abs(figure.values().get(0).get().value()))
                : OptionalDouble.empty();
    }

    private Optional<Requirement> requirement(Compared figure) {
        return comparison.sessions().stream()
                .flatMap(session -> session.findings().verdicts().stream())
                .map(verdict -> verdict.requirement())
                .filter(asked ->
                        asked.figure().equals(figure.name()) && asked.rail().equals(figure.rail()))
                .findFirst();
    }

    private static double span(Limit limit, Compared figure) {
        if (limit.least().isPresent() && limit.most().isPresent()) {
            return limit.most().getAsDouble() - limit.least().getAsDouble();
        }
        double one = Math.abs(limit.least().orElse(limit.most().orElse(0)));
        boolean ratio = Stream.of(FigureName.AVERAGE_EFFICIENCY, FigureName.FULL_LOAD_EFFICIENCY)
                .anyMatch(name -> name.word().equals(figure.name()));
        return ratio && one < 1 ? 1 - one : one;
    }

    /** Whether a change of the figure is real and large enough to matter. */
    public boolean matters(Compared figure, Change change) {
        OptionalDouble least = from(figure);
        return change.answer() == Answer.REAL
                && least.isPresent()
                && Math.abs(change.difference().value()) >= least.getAsDouble();
    }

    /** What a change comes to, in words. */
    public String words(Compared figure, Change change) {
        return switch (change.answer()) {
            case REAL -> matters(figure, change) ? "real change, matters" : "real, too small to matter";
            default -> change.answer().words();
        };
    }

    /** How that was decided, a sentence. */
    static String rule() {
        return String.format(
                java.util.Locale.ROOT,
                "A change is real where it is larger than its own U. It matters from %.0f %% of what a requirement allows"
                        + " on, or from %.0f %% of the first value where nothing is asked.",
                100 * SHARE_OF_THE_LIMIT,
                100 * SHARE_OF_THE_VALUE);
    }
}
