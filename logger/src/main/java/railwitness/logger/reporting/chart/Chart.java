package railwitness.logger.reporting.chart;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Set;
import java.util.stream.DoubleStream;

/**
 * A picture of lines over one axis.
 *
 * @param title what stands upright against what lies across, such as "Rails against load"
 * @param unit of the upright axis
 * @param acrossUnit of the axis across, written behind its numbers
 * @param curves at least one, each with a point
 * @param limits drawn across
 * @param places names of the places 1, 2, 3 and so on along the axis across, each then drawn as a dot; empty for an axis
 *     of numbers
 * @param odd places whose dots stand out, with their names beside them
 * @param reach values that the upright axis shall hold beside those drawn
 */
public record Chart(
        String title,
        String unit,
        String acrossUnit,
        List<Curve> curves,
        List<LimitLine> limits,
        List<String> places,
        Set<Integer> odd,
        List<Double> reach) {
    public Chart {
        reach = List.copyOf(reach);
        places = List.copyOf(places);
        odd = Set.copyOf(odd);
        curves = List.copyOf(curves);
        limits = List.copyOf(limits);
        if (curves.stream().noneMatch(curve -> curve.x().length > 0)) {
            throw new IllegalArgumentException("picture '" + title + "' has nothing to draw");
        }
    }

    /** With numbers along the axis across. */
    public Chart(String title, String unit, String acrossUnit, List<Curve> curves, List<LimitLine> limits) {
        this(title, unit, acrossUnit, curves, limits, List.of(), Set.of());
    }

    /** With places, and no further than what is drawn. */
    public Chart(
            String title,
            String unit,
            String acrossUnit,
            List<Curve> curves,
            List<LimitLine> limits,
            List<String> places,
            Set<Integer> odd) {
        this(title, unit, acrossUnit, curves, limits, places, odd, List.of());
    }

    /**
     * The same beside another picture of the same unit whose values overlap: both upright axes hold the values of both, so
     * that their heights can be compared by eye.
     */
    public Chart beside(Chart other) {
        DoubleSummaryStatistics own = values();
        DoubleSummaryStatistics others = other.values();
        boolean overlap = own.getMin() <= others.getMax() && others.getMin() <= own.getMax();
        return unit.equals(other.unit) && overlap
                ? new Chart(
                        title, unit, acrossUnit, curves, limits, places, odd, List.of(others.getMin(), others.getMax()))
                : this;
    }

    private DoubleSummaryStatistics values() {
        return DoubleStream.concat(
                        curves.stream().flatMapToDouble(curve -> DoubleStream.of(curve.y())),
                        limits.stream().mapToDouble(LimitLine::at))
                .summaryStatistics();
    }

    /** The same under another title. */
    public Chart titled(String wanted) {
        return new Chart(wanted, unit, acrossUnit, curves, limits, places, odd, reach);
    }

    /** How far curves are from the first at most, as a share of the height of all of them; 0 for one curve. */
    public double apart() {
        DoubleSummaryStatistics all = curves.stream()
                .flatMapToDouble(curve -> DoubleStream.of(curve.y()))
                .summaryStatistics();
        double furthest = 0;
        for (Curve curve : curves) {
            for (int i = 0; i < curve.x().length; i++) {
                furthest =
                        Math.max(furthest, Math.abs(curve.y()[i] - curves.get(0).at(curve.x()[i])));
            }
        }
        return all.getMax() > all.getMin() ? furthest / (all.getMax() - all.getMin()) : 0;
    }
}
