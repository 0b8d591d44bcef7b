package railwitness.logger.reporting.chart;

/**
 * A limit across a picture.
 *
 * @param words written at it, such as "lowest allowed 86 %"
 * @param at in the unit of the upright axis
 * @param lower true where what lies below is not allowed
 */
public record LimitLine(String words, double at, boolean lower) {}
