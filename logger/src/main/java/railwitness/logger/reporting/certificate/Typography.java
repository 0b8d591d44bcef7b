package railwitness.logger.reporting.certificate;

import java.math.BigDecimal;
import java.util.Optional;
import railwitness.logger.reporting.findings.FigureRow;

/** Numbers and words of the findings as they are set in print: true minus, plus-minus and signs of order. */
public final class Typography {
    private Typography() {}

    /** The same text with the signs of print. */
    public static String of(String plain) {
        return plain.replace("+-", "\u00b1")
                .replace("<=", "\u2264")
                .replace(">=", "\u2265")
                .replace("ohm", "\u03a9")
                .replace("degC", "\u00b0C")
                .replaceAll("(?<![\\p{Alnum}])-(?=\\d)", "\u2212");
    }

    /** Such as "+1.90 more"; empty where nothing is expected. */
    static String difference(FigureRow row) {
        Optional<BigDecimal> difference = row.difference();
        return difference
                .map(digits -> (digits.signum() > 0 ? "+" : "")
                        + of(digits.toPlainString())
                        + (row.differs() ? " " + row.differsText() : ""))
                .orElse("");
    }
}
