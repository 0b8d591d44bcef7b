package railwitness.logger.recording.plan;

import java.time.Duration;

/**
 * How long a step may take to settle, and how long it is averaged once it has.
 *
 * @param settleAtMost after this the step is averaged all the same and marked as not settled
 * @param average length of the averaged part, above zero
 */
public record Timing(Duration settleAtMost, Duration average) {
    public Timing {
        if (settleAtMost.isNegative() || average.isNegative() || average.isZero()) {
            throw new IllegalArgumentException("settling " + settleAtMost + " must not be negative and averaging "
                    + average + " must be above zero");
        }
    }
}
