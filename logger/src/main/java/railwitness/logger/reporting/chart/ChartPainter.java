package railwitness.logger.reporting.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Draws a picture: hairlines, no boxes, names beside the lines instead of a legend. */
public final class ChartPainter {
    private static final int UPRIGHT_STEPS = 4;
    private static final int ACROSS_STEPS = 5;
    private static final int MOST_WHISKERS = 60;
    private static final double LEAST_WHISKER = 0.006;
    private static final double LAST = 0.85;
    private static final double HALF_NAME = 0.08;
    private static final float SCREEN_AXIS = 11.5f;
    private static final float[] DASHES = {3.2f, 2.2f};
    private static final float[][] RAIL_DASHES = {{11, 3}, {7, 2, 1.5f, 2}, {16, 3, 4, 3}};
    private static final float[] LIMIT_DASHES = {4.5f, 2.5f};

    private final Chart chart;
    private final ChartInk ink;

    private ChartPainter(Chart chart, ChartInk ink) {
        this.chart = chart;
        this.ink = ink;
    }

    /** Draws into a rectangle of the ground; nothing is filled behind it. */
    public static void draw(Chart chart, ChartInk ink, Graphics2D ground, Rectangle2D area) {
        new ChartPainter(chart, ink).draw(ground, area);
    }

    private void draw(Graphics2D ground, Rectangle2D area) {
        Shape clip = ground.getClip();
        float size = ink.titleSize();
        title(ground, area.getX(), area.getY() + size, area.getWidth());
        double top = area.getY() + size * 1.7;
        XYPlot plot = plot();
        plot.draw(
                ground,
                new Rectangle2D.Double(area.getX(), top, area.getWidth(), area.getY() + area.getHeight() - top),
                null,
                null,
                null);
        ground.setClip(clip);
    }

    private void title(Graphics2D ground, double x, double y, double wide) {
        String whole = chart.title() + (chart.unit().isEmpty() ? "" : ", " + chart.unit());
        double natural = ground.getFontMetrics(ink.lettering().medium().deriveFont(ink.titleSize()))
                .getStringBounds(whole, ground)
                .getWidth();
        float size = (float) (ink.titleSize() * Math.min(1, wide / natural));
        Font medium = ink.lettering().medium().deriveFont(size);
        ground.setFont(medium);
        ground.setColor(ink.ink());
        ground.drawString(chart.title(), (float) x, (float) y);
        double width = ground.getFontMetrics(medium)
                .getStringBounds(chart.title(), ground)
                .getWidth();
        ground.setFont(ink.lettering().regular().deriveFont(size));
        ground.setColor(ink.muted());
        ground.drawString(chart.unit().isEmpty() ? "" : ", " + chart.unit(), (float) (x + width), (float) y);
    }

    private XYPlot plot() {
        AxisRange across = across();
        AxisRange upright = upright();
        XYPlot plot = new XYPlot(lines(), acrossAxis(across), axis(upright, ""), lineRenderer());
        plot.setDataset(1, whiskers(upright));
        plot.setRenderer(1, whiskerRenderer());
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setInsets(new RectangleInsets(0, 0, 3, ink.axisSize() * 1.6));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinePaint(ink.rule());
        plot.setRangeGridlineStroke(new BasicStroke(0.6f * thick()));
        plot.setRangeZeroBaselineVisible(false);
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        for (LimitLine limit : chart.limits()) {
            plot.addRangeMarker(new ValueMarker(limit.at(), colour(limit), limitStroke()));
            if (!limit.words().isEmpty()) {
                plot.addAnnotation(limitWords(limit, across, upright));
            }
        }
        names(plot, across, upright);
        oddNames(plot, upright);
        return plot;
    }

    private NumberAxis acrossAxis(AxisRange range) {
        NumberAxis axis = axis(range, " " + chart.acrossUnit());
        if (!chart.places().isEmpty()) {
            axis.setTickUnit(new NumberTickUnit(1, new PlaceNames(chart.places()), 0));
        }
        return axis;
    }

    /** The names of the places that stand out, beside their dots. */
    private void oddNames(XYPlot plot, AxisRange upright) {
        for (Curve curve : chart.curves()) {
            for (int i = 0; i < curve.x().length && !curve.predicted(); i++) {
                int place = (int) Math.round(curve.x()[i]);
                if (chart.odd().contains(place)) {
                    boolean above = curve.y()[i] < (upright.from() + upright.to()) / 2;
                    plot.addAnnotation(words(
                            chart.places().get(place - 1),
                            curve.x()[i],
                            curve.y()[i] + 2 * gap(upright) * (above ? 1 : -1),
                            above ? TextAnchor.BOTTOM_CENTER : TextAnchor.TOP_CENTER,
                            ink.fault(),
                            ink.lettering().medium()));
                }
            }
        }
    }

    private AxisRange across() {
        double least = xs().min().orElse(0);
        double most = xs().max().orElse(1);
        if (!chart.places().isEmpty()) {
            return new AxisRange(0.5, chart.places().size() + 0.5, 1);
        }
        AxisRange round = AxisRange.holding(least, most, ACROSS_STEPS);
        double beyond = (most - least) * 0.03;
        return new AxisRange(least - beyond, most + beyond, round.step());
    }

    private AxisRange upright() {
        double least = DoubleStream.concat(reach(-1), limits()).min().orElse(0);
        double most = DoubleStream.concat(reach(1), limits()).max().orElse(1);
        double forNames = (most - least) * 0.08;
        AxisRange range = AxisRange.holding(least, most + forNames, UPRIGHT_STEPS);
        if (nameBelow(range)) {
            range = AxisRange.holding(least - forNames, most + forNames, UPRIGHT_STEPS);
        }
        double forDots = chart.places().isEmpty() ? 0 : (range.to() - range.from()) * 0.04;
        return new AxisRange(range.from() - forDots, range.to(), range.step());
    }

    /** Whether the lower one of two named curves ends so low that there is no room for its name below it. */
    private boolean nameBelow(AxisRange range) {
        List<Curve> named = chart.curves().stream()
                .filter(curve -> !curve.predicted() && !curve.name().isEmpty() && curve.y().length > 0)
                .toList();
        double low = range.from() + (range.to() - range.from()) * 0.1;
        return named.size() > 1 && named.stream().anyMatch(curve -> curve.y()[curve.y().length - 1] < low);
    }

    private DoubleStream xs() {
        return chart.curves().stream().flatMapToDouble(curve -> DoubleStream.of(curve.x()));
    }

    private DoubleStream ys() {
        return chart.curves().stream().flatMapToDouble(curve -> DoubleStream.of(curve.y()));
    }

    /** The values; where places are compared, as far as their whiskers reach. */
    private DoubleStream reach(int direction) {
        DoubleStream reach = chart.reach().stream().mapToDouble(Double::doubleValue);
        if (chart.places().isEmpty()) {
            return DoubleStream.concat(reach, ys());
        }
        return DoubleStream.concat(reach, whiskerEnds(direction));
    }

    private DoubleStream whiskerEnds(int direction) {
        return chart.curves().stream().flatMapToDouble(curve -> IntStream.range(0, curve.y().length)
                .mapToDouble(i -> curve.y()[i] + direction * curve.expanded()[i]));
    }

    private DoubleStream limits() {
        return chart.limits().stream().mapToDouble(LimitLine::at);
    }

    private NumberAxis axis(AxisRange range, String unit) {
        NumberAxis axis = new NumberAxis();
        axis.setRange(range.from(), range.to());
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(ink.numbers());
        symbols.setMinusSign('\u2212');
        DecimalFormat format = new DecimalFormat("0", symbols);
        format.setMinimumFractionDigits(range.places());
        format.setMaximumFractionDigits(range.places());
        format.setPositiveSuffix(unit);
        format.setNegativeSuffix(unit);
        axis.setTickUnit(new NumberTickUnit(range.step(), format, 0));
        axis.setTickLabelFont(ink.lettering().regular().deriveFont(ink.axisSize()));
        axis.setTickLabelPaint(ink.muted());
        axis.setAxisLineVisible(false);
        axis.setTickMarksVisible(false);
        axis.setTickLabelInsets(new RectangleInsets(3, 0, 0, 4));
        return axis;
    }

    private XYSeriesCollection lines() {
        XYSeriesCollection all = new XYSeriesCollection();
        for (int i = 0; i < chart.curves().size(); i++) {
            Curve curve = chart.curves().get(i);
            XYSeries series = new XYSeries(i, false, true);
            for (int j = 0; j < curve.x().length; j++) {
                series.add(curve.x()[j], curve.y()[j]);
            }
            all.addSeries(series);
        }
        return all;
    }

    private XYLineAndShapeRenderer lineRenderer() {
        XYLineAndShapeRenderer renderer = chart.places().isEmpty()
                ? new XYLineAndShapeRenderer(true, false)
                : new DottedLines(chart, ink.axisSize(), ink.fault());
        renderer.setDrawSeriesLineAsPath(chart.places().isEmpty());
        for (int i = 0; i < chart.curves().size(); i++) {
            Curve curve = chart.curves().get(i);
            renderer.setSeriesPaint(i, curve.predicted() ? ink.muted() : ink.of(curve));
            renderer.setSeriesShapesVisible(i, !chart.places().isEmpty() && !curve.predicted());
            renderer.setSeriesStroke(i, curve.predicted() ? dashed(0.9f, DASHES) : measured(curve));
        }
        return renderer;
    }

    /** Told apart without colour: the first rail solid and wide, the others each in a dash of its own. */
    private BasicStroke measured(Curve curve) {
        int dash = curve.rail().orElse(0) % (RAIL_DASHES.length + 1);
        return dash == 0 || !chart.places().isEmpty()
                ? new BasicStroke(width(curve) * thick())
                : dashed(width(curve), RAIL_DASHES[dash - 1]);
    }

    /** Whiskers where they are long enough to be seen. */
    private XYIntervalSeriesCollection whiskers(AxisRange upright) {
        double least = (upright.to() - upright.from()) * LEAST_WHISKER;
        XYIntervalSeriesCollection all = new XYIntervalSeriesCollection();
        for (int i = 0; i < chart.curves().size(); i++) {
            Curve curve = chart.curves().get(i);
            XYIntervalSeries series = new XYIntervalSeries(i, false, true);
            for (int j = 0; j < curve.x().length && curve.x().length <= MOST_WHISKERS; j++) {
                if (curve.expanded()[j] > least) {
                    double x = curve.x()[j];
                    double y = curve.y()[j];
                    series.add(x, x, x, y, y - curve.expanded()[j], y + curve.expanded()[j]);
                }
            }
            all.addSeries(series);
        }
        return all;
    }

    private XYErrorRenderer whiskerRenderer() {
        XYErrorRenderer renderer = new XYErrorRenderer();
        renderer.setDrawXError(false);
        renderer.setCapLength(3 * thick());
        renderer.setErrorStroke(new BasicStroke(0.7f * thick()));
        renderer.setDefaultShapesVisible(false);
        for (int i = 0; i < chart.curves().size(); i++) {
            renderer.setSeriesPaint(i, ink.of(chart.curves().get(i)));
        }
        return renderer;
    }

    /** Rails that lie on each other are all seen: the first is the widest and lowest. */
    private static float width(Curve curve) {
        return curve.rail().isPresent() && curve.rail().getAsInt() % 2 == 0 ? 1.9f : 1.0f;
    }

    private BasicStroke dashed(float width, float[] dashes) {
        float[] scaled = dashes.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= thick();
        }
        return new BasicStroke(width * thick(), BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, scaled, 0);
    }

    /** How much thicker lines are drawn than on paper or on a screen at 100 %. */
    private float thick() {
        return Math.max(1, ink.axisSize() / SCREEN_AXIS);
    }

    private XYTextAnnotation limitWords(LimitLine limit, AxisRange across, AxisRange upright) {
        boolean dots = !chart.places().isEmpty();
        boolean outside = limit.mark() || dots && !limit.lower();
        boolean above = outside || limit.at() - upright.from() < (upright.to() - upright.from()) * 0.12;
        double margin = (across.to() - across.from()) * 0.02;
        TextAnchor left = above ? TextAnchor.BOTTOM_LEFT : TextAnchor.TOP_LEFT;
        TextAnchor right = above ? TextAnchor.BOTTOM_RIGHT : TextAnchor.TOP_RIGHT;
        return words(
                limit.words(),
                dots ? across.from() + margin : across.to() - margin,
                limit.at() + gap(upright) * (above ? 1 : -1),
                dots ? left : right,
                colour(limit),
                ink.lettering().regular());
    }

    /** Where places are held against each other a limit is as on a strip: a line in ink. */
    private BasicStroke limitStroke() {
        return chart.places().isEmpty() ? dashed(0.8f, LIMIT_DASHES) : new BasicStroke(1.4f * thick());
    }

    private Color colour(LimitLine limit) {
        if (!chart.places().isEmpty()) {
            return ink.ink();
        }
        return limit.mark() ? ink.muted() : ink.fault();
    }

    /** Names beside the lines: of each pair the higher one's above, the other's below; further pairs further to the left. */
    private void names(XYPlot plot, AxisRange across, AxisRange upright) {
        int measured = 0;
        boolean saidPredicted = false;
        for (Curve curve : chart.curves()) {
            if (curve.name().isEmpty()) {
                continue;
            }
            double share = curve.predicted() ? 0.25 : 0.9 - 0.22 * (measured / 2);
            double x = across.from() + share * (across.to() - across.from());
            boolean above = curve.predicted() ? liesAbove(curve) : isHigher(measured, x, upright);
            if (!curve.predicted()) {
                measured++;
            } else if (saidPredicted) {
                continue;
            }
            saidPredicted |= curve.predicted();
            boolean last = !curve.predicted() && share > LAST;
            plot.addAnnotation(words(
                    curve.name(),
                    last ? across.to() : x,
                    edge(curve, across, upright, x, above) + gap(upright) * (above ? 1 : -1),
                    anchor(above, last),
                    curve.predicted() ? ink.muted() : ink.of(curve),
                    curve.predicted()
                            ? ink.lettering().italic()
                            : ink.lettering().regular()));
        }
    }

    /** The name at the end of the lines ends where they do, however narrow the picture is. */
    private static TextAnchor anchor(boolean above, boolean last) {
        if (last) {
            return above ? TextAnchor.BOTTOM_RIGHT : TextAnchor.TOP_RIGHT;
        }
        return above ? TextAnchor.BOTTOM_CENTER : TextAnchor.TOP_CENTER;
    }

    /** Whether a named measured curve is the higher one of its pair there; the first where they lie on each other. */
    private boolean isHigher(int which, double x, AxisRange upright) {
        List<Curve> named = chart.curves().stream()
                .filter(curve -> !curve.predicted() && !curve.name().isEmpty())
                .toList();
        int other = which % 2 == 0 ? which + 1 : which - 1;
        if (other >= named.size()) {
            return true;
        }
        double away = named.get(which).at(x) - named.get(other).at(x);
        boolean together = Math.abs(away) < gap(upright);
        return together ? which % 2 == 0 : away > 0;
    }

    /** Whether a prediction lies above what was measured, or on it, about where its name stands. */
    private boolean liesAbove(Curve predicted) {
        double place = predicted.x()[predicted.x().length / 4];
        return chart.curves().stream()
                .filter(curve -> !curve.predicted())
                .allMatch(curve -> predicted.at(place) >= curve.at(place));
    }

    /** The outermost line along a name, so that the name crosses none. */
    private double edge(Curve curve, AxisRange across, AxisRange upright, double x, boolean above) {
        double half = (across.to() - across.from()) * HALF_NAME;
        double near = (upright.to() - upright.from()) * 0.12;
        DoubleStream all = DoubleStream.of(x - half, x, x + half).flatMap(place -> chart.curves().stream()
                .mapToDouble(other -> other.at(place))
                .filter(y -> Math.abs(y - curve.at(place)) < near));
        return above ? all.max().orElse(curve.at(x)) : all.min().orElse(curve.at(x));
    }

    private static double gap(AxisRange upright) {
        return (upright.to() - upright.from()) * 0.025;
    }

    private XYTextAnnotation words(String text, double x, double y, TextAnchor anchor, Color colour, Font face) {
        XYTextAnnotation words = new XYTextAnnotation(text, x, y);
        words.setTextAnchor(anchor);
        words.setPaint(colour);
        words.setFont(face.deriveFont(ink.axisSize()));
        return words;
    }
}
