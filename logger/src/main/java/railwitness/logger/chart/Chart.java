package railwitness.logger.chart;

import java.util.List;

/**
 * A picture of lines over one axis.
 *
 * @param title what stands upright against what lies across, such as "Rails against load"
 * @param unit of the upright axis
 * @param acrossUnit of the axis across, written behind its numbers
 * @param curves at least one, each with a point
 * @param limits drawn across
 */
public record Chart(String title, String unit, String acrossUnit, List<Curve> curves, List<LimitLine> limits) {
    public Chart {
        curves = List.copyOf(curves);
        limits = List.copyOf(limits);
        if (curves.stream().noneMatch(curve -> curve.x().length > 0)) {
            throw new IllegalArgumentException("picture '" + title + "' has nothing to draw");
        }
    }
}
