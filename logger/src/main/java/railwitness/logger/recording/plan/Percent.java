package railwitness.logger.recording.plan;

import java.math.BigDecimal;

/** How a share or a voltage is called in the name of a step. */
final class Percent {
    private Percent() {}

    /** 25 % or 12.5 %. */
    static String words(double percent) {
        return plain(percent) + " %";
    }

    /** Without trailing zeros: 11, 12.5. */
    static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
