package railwitness.analysis.transformer;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Numbers and the sentence on top of a design, as a person reads them. */
public final class DesignWords {
    private static final MathContext THREE = new MathContext(3);

    private DesignWords() {}

    /** Three digits, no more zeros than the number has. */
    public static String number(double value) {
        BigDecimal rounded = new BigDecimal(value).round(THREE);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** Three digits with the unit; a bare number for the unit 1. */
    public static String withUnit(double value, String unit) {
        return unit.equals("1") ? number(value) : number(value) + " " + unit;
    }

    static String verdict(DesignReport report) {
        List<DesignLine> beyond =
                report.lines().stream().filter(line -> !line.holds()).toList();
        if (!beyond.isEmpty()) {
            return "Not to be wound so: "
                    + beyond.stream().map(DesignWords::limit).collect(Collectors.joining("; ")) + ".";
        }
        return report.limiting()
                .map(line -> String.format(
                        Locale.ROOT,
                        "Every line keeps its limit. What limits: %s.%s",
                        limit(line),
                        report.gaps().isEmpty() ? "" : " The sheet leaves things open, see below."))
                .orElse("No line has a limit that the sheet lets it be held against.");
    }

    private static String limit(DesignLine line) {
        boolean most = line.atMost().isPresent();
        double limit = most ? line.atMost().getAsDouble() : line.atLeast().orElseThrow();
        return String.format(
                Locale.ROOT,
                "%s %s of %s %s (%.0f %%)",
                line.name(),
                number(line.value()),
                most ? "at most" : "at least",
                withUnit(limit, line.unit()),
                100 * line.share().getAsDouble());
    }
}
