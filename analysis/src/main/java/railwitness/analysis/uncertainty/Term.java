package railwitness.analysis.uncertainty;

import java.util.Objects;

/**
 * One influence's part in an estimate.
 *
 * @param influence the cause
 * @param coefficient signed standard uncertainty it brings, in the estimate's unit: sensitivity times the
 *     influence's u
 */
public record Term(Influence influence, double coefficient) {
    public Term {
        Objects.requireNonNull(influence, "influence");
        Arguments.unlessFinite("coefficient of " + influence.name(), coefficient);
    }
}
