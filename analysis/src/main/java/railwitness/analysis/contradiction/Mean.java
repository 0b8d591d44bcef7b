package railwitness.analysis.contradiction;

import railwitness.analysis.uncertainty.Estimate;

/**
 * What a channel read over one step.
 *
 * @param value mean, with its sign, in the channel's unit
 * @param still every reading of it was the same to its last digit
 * @param median of its readings: what most of them say, however wild one is
 * @param farthest the reading farthest from the median
 */
public record Mean(Estimate value, boolean still, double median, double farthest) {
    /** Of readings that lie together. */
    public Mean(Estimate value, boolean still) {
        this(value, still, value.value(), value.value());
    }

    double apart() {
        return Math.abs(farthest - median);
    }
}
