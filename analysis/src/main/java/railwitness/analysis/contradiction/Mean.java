package railwitness.analysis.contradiction;

import railwitness.analysis.uncertainty.Estimate;

/**
 * What a channel read over one step.
 *
 * @param value mean, with its sign, in the channel's unit
 * @param still every reading of it was the same to its last digit
 */
public record Mean(Estimate value, boolean still) {}
