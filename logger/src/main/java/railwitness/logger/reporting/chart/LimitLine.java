package railwitness.logger.reporting.chart;

/**
 * A limit across a picture, or a mark of where the drawn values end.
 *
 * @param words written at it, such as "lowest allowed 86 %"
 * @param at in the unit of the upright axis
 * @param lower true where what lies below is not allowed
 * @param mark true where it allows and forbids nothing: drawn in the ink of the axes
 */
public record LimitLine(String words, double at, boolean lower, boolean mark) {
    public LimitLine(String words, double at, boolean lower) {
        this(words, at, lower, false);
    }
}
