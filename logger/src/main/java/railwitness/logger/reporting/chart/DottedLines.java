package railwitness.logger.reporting.chart;

import java.awt.Color;
import java.awt.Paint;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;

/** A dot at each place and no line between places that have nothing to do with each other; the odd ones larger and in the colour of what is wrong. */
final class DottedLines extends XYLineAndShapeRenderer {
    private final transient Chart chart;
    private final double dot;
    private final transient Color odd;

    /** @param lettering size of the letters at the axes, which the dots go by */
    DottedLines(Chart chart, double lettering, Color odd) {
        super(true, true);
        setUseFillPaint(true);
        setDrawOutlines(false);
        this.chart = chart;
        this.dot = lettering * 0.42;
        this.odd = odd;
    }

    @Override
    public boolean getItemLineVisible(int curve, int item) {
        return chart.curves().get(curve).predicted();
    }

    private boolean isOdd(int curve, int item) {
        return chart.odd().contains((int) Math.round(chart.curves().get(curve).x()[item]));
    }

    @Override
    public Paint getItemFillPaint(int curve, int item) {
        return isOdd(curve, item) ? odd : getItemPaint(curve, item);
    }

    @Override
    public boolean getItemShapeFilled(int curve, int item) {
        return true;
    }

    @Override
    public Shape getItemShape(int curve, int item) {
        double size = isOdd(curve, item) ? dot * 1.6 : dot;
        return new Ellipse2D.Double(-size / 2, -size / 2, size, size);
    }
}
