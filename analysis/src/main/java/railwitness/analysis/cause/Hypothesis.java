package railwitness.analysis.cause;

import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * A supposed fault whose size is not known.
 *
 * @param code which
 * @param rail on which rail, where it is of one
 * @param least smallest size it may have
 * @param most largest
 * @param expected what it would do, by its size
 */
record Hypothesis(
        CauseCode code,
        Optional<String> rail,
        double least,
        double most,
        DoubleFunction<Map<String, Double>> expected) {

    /** One without a size. */
    static Hypothesis plain(CauseCode code, Optional<String> rail, Map<String, Double> expected) {
        return new Hypothesis(code, rail, 1, 1, size -> expected);
    }

    boolean sized() {
        return most > least;
    }
}
