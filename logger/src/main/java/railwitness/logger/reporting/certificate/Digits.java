package railwitness.logger.reporting.certificate;

import java.math.RoundingMode;
import java.util.Locale;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;
import railwitness.logger.reporting.findings.FigureRow;

/** A measured value with as many digits as its uncertainty warrants. */
final class Digits {
    /** Microvolts of a rail that is off say nothing: U is then rounded up, so that it is never printed as zero. */
    private static final int DECIMALS = 5;

    private Digits() {}

    /** Value and U, such as "36.8826 &plusmn; 0.0074"; the value alone, to five digits, where U is not known. */
    static String of(Estimate value, int factor) {
        Estimate scaled = value.scale(factor);
        if (!scaled.known() || scaled.u() == 0) {
            return Typography.of(String.format(Locale.ROOT, "%.5g", scaled.value()));
        }
        Rounding rounded = Rounding.expanded(scaled, scaled.coverage(FigureRow.PROBABILITY));
        return Typography.of(
                rounded.uncertainty().scale() > DECIMALS
                        ? rounded.value()
                                        .setScale(DECIMALS, RoundingMode.HALF_UP)
                                        .toPlainString() + " +- "
                                + rounded.uncertainty()
                                        .setScale(DECIMALS, RoundingMode.UP)
                                        .toPlainString()
                        : rounded.toString());
    }
}
