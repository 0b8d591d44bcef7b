package railwitness.logger.ui.screen.trace;

import java.util.OptionalDouble;

/**
 * One step along the time axis.
 *
 * @param label what the sheet calls it
 * @param fromSeconds where it begins, or is expected to
 * @param toSeconds where it ends, or is expected to
 * @param averagedFrom where its averaging begins; empty while it has not
 * @param averagedTo up to where it has been averaged
 * @param predicted what the design predicts for this trace, in its unit
 */
public record StepSpan(
        String label,
        double fromSeconds,
        double toSeconds,
        OptionalDouble averagedFrom,
        OptionalDouble averagedTo,
        OptionalDouble predicted) {
    /** The same whether its averaging has gone on or not. */
    StepSpan withoutEndOfAverage() {
        OptionalDouble begun = averagedTo.isPresent() ? averagedFrom : averagedTo;
        return new StepSpan(label, fromSeconds, toSeconds, averagedFrom, begun, predicted);
    }
}
