package railwitness.logger.reporting.comparing;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import railwitness.analysis.expected.Deviations;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;

/** Numbers of a comparison for print: never finer than what is known of them. */
final class Print {
    private static final double COVERAGE = 0.95;
    private static final int DIGITS_WHERE_UNKNOWN = 5;

    private Print() {}

    /** Decimals for all values side by side: as fine as one of them or one difference to the first is known. */
    static int places(Compared figure) {
        int own = figure.values().stream().mapToInt(Print::own).max().orElse(0);
        int changes = figure.changes().stream()
                .flatMap(Optional::stream)
                .filter(change -> change.answer() != Answer.NOT_KNOWN)
                .mapToInt(change -> rounding(change).uncertainty().scale())
                .max()
                .orElse(0);
        return Math.max(own, changes);
    }

    private static int own(Optional<Estimate> value) {
        return value.filter(known -> known.known() && known.u() > 0)
                .map(known -> Rounding.expanded(known, known.coverage(COVERAGE))
                        .uncertainty()
                        .scale())
                .orElse(0);
    }

    static String value(Compared figure, int place) {
        Optional<Estimate> value = figure.values().get(place);
        if (value.isEmpty()) {
            return "";
        }
        if (!value.get().known() || value.get().u() == 0) {
            return plain(value.get().value());
        }
        return BigDecimal.valueOf(value.get().value())
                .setScale(Math.max(0, places(figure)), RoundingMode.HALF_UP)
                .toPlainString();
    }

    /** What is expected of that session, with its own U, and a mark where the value differs from it; empty for none. */
    static String expected(Compared figure, int place) {
        if (figure.expected().isEmpty() || figure.expected().get(place).isEmpty()) {
            return "";
        }
        Estimate expected = figure.expected().get(place).get();
        boolean differs = figure.values()
                .get(place)
                .filter(value -> Math.abs(Deviations.times(value, expected)) > Deviations.MEANS_SOMETHING)
                .isPresent();
        return Rounding.expanded(expected, expected.coverage(COVERAGE)) + (differs ? " !" : "");
    }

    private static Rounding rounding(Change change) {
        return Rounding.of(change.difference().value(), change.coverage().expanded());
    }

    static String difference(Change change) {
        return change.answer() == Answer.NOT_KNOWN
                ? plain(change.difference().value())
                : rounding(change).valueText();
    }

    static String expanded(Change change) {
        return change.answer() == Answer.NOT_KNOWN
                ? "not known"
                : rounding(change).uncertaintyText();
    }

    /** Five digits. */
    static String plain(double value) {
        return value == 0
                ? "0"
                : BigDecimal.valueOf(value)
                        .round(new MathContext(DIGITS_WHERE_UNKNOWN, RoundingMode.HALF_UP))
                        .toPlainString();
    }
}
