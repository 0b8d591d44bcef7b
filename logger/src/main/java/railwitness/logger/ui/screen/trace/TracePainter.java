package railwitness.logger.ui.screen.trace;

import java.awt.BasicStroke;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.Stroke;
import java.util.OptionalDouble;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Numbers;

/** Paints one trace into its place: no antialiasing of lines, one rectangle for each pixel column. */
final class TracePainter {
    /** Where fewer than one column in so many holds a reading, each is a dot. */
    private static final int SPARSE = 8;

    private final Graphics2D g;
    private final Palette palette;
    private final TracePicture picture;
    private final TraceModel model;
    private final Rectangle plot;
    private final ValueAxis axis;
    private final Rectangle seen;

    /** @param g its clip is what is painted */
    TracePainter(Graphics2D g, Palette palette, TracePicture picture) {
        this.g = g;
        this.palette = palette;
        this.picture = picture;
        this.model = picture.model();
        this.plot = picture.plot();
        this.axis = picture.axis();
        this.seen = g.getClipBounds() == null ? plot : g.getClipBounds();
    }

    void paint() {
        averaged();
        grid();
        steps();
        Shape before = g.getClip();
        g.clipRect(plot.x, plot.y, plot.width, plot.height);
        predicted();
        readings();
        cursor();
        notes();
        g.setClip(before);
        limits();
    }

    /** A small flag at the top edge for each remark. */
    private void notes() {
        g.setColor(palette.ink());
        int high = Look.px(9);
        for (double at : model.notes()) {
            int x = x(at);
            g.fillRect(x, plot.y, 1, high * 2);
            g.fillPolygon(new int[] {x, x + high, x}, new int[] {plot.y, plot.y + high / 2, plot.y + high}, 3);
        }
    }

    private int x(double seconds) {
        return picture.x(seconds);
    }

    private int y(double value) {
        return picture.y(value);
    }

    private void averaged() {
        g.setColor(palette.tint());
        for (StepSpan span : model.spans()) {
            if (span.averagedFrom().isPresent()) {
                int from = x(span.averagedFrom().getAsDouble());
                g.fillRect(from, plot.y, x(span.averagedTo().orElse(span.toSeconds())) - from, plot.height);
            }
        }
    }

    private void grid() {
        g.setFont(Type.AXIS.font());
        FontMetrics metrics = g.getFontMetrics();
        boolean labels = seen.x < plot.x;
        for (double value = axis.firstLine(); value <= axis.high(); value += axis.step()) {
            int y = y(value);
            g.setColor(palette.rule());
            g.fillRect(plot.x, y, plot.width, 1);
            if (!labels) {
                continue;
            }
            g.setColor(palette.muted());
            String label = Numbers.fixed(value, axis.places());
            g.drawString(label, plot.x - metrics.stringWidth(label) - Look.px(6), y + metrics.getAscent() / 2 - 1);
        }
    }

    private void steps() {
        g.setFont(Type.AXIS.font());
        FontMetrics metrics = g.getFontMetrics();
        int base = plot.y + plot.height + metrics.getAscent() + Look.px(3);
        boolean labels = seen.y + seen.height > plot.y + plot.height;
        for (StepSpan span : model.spans()) {
            int from = x(span.fromSeconds());
            int to = x(span.toSeconds());
            g.setColor(palette.strongRule());
            g.fillRect(from, plot.y, 1, plot.height);
            if (!labels) {
                continue;
            }
            g.setColor(palette.muted());
            if (metrics.stringWidth(span.label()) <= to - from - Look.px(8)) {
                g.drawString(span.label(), from + Look.px(4), base);
            }
        }
    }

    private void predicted() {
        g.setColor(palette.pencil());
        Stroke before = g.getStroke();
        g.setStroke(dashed(1, 5));
        OptionalDouble last = OptionalDouble.empty();
        for (StepSpan span : model.spans()) {
            if (span.predicted().isPresent()) {
                int y = y(span.predicted().getAsDouble());
                int from = x(span.fromSeconds());
                if (last.isPresent()) {
                    g.drawLine(from, y(last.getAsDouble()), from, y);
                }
                g.drawLine(from, y, x(span.toSeconds()), y);
            }
            last = span.predicted();
        }
        g.setStroke(before);
    }

    private void cursor() {
        if (model.cursor().isPresent()) {
            g.setColor(palette.ink());
            g.fillRect(x(model.cursor().getAsDouble()), plot.y, 1, plot.height);
        }
    }

    private void limits() {
        Stroke before = g.getStroke();
        g.setFont(Type.AXIS.font());
        FontMetrics metrics = g.getFontMetrics();
        for (TraceModel.LimitLine limit : model.limits()) {
            if (limit.value() >= axis.low() && limit.value() <= axis.high()) {
                int y = y(limit.value());
                g.setColor(palette.fault());
                g.setStroke(limit.broken() ? new BasicStroke(Look.px(3)) : dashed(Look.px(1), Look.px(7)));
                g.drawLine(plot.x, y, plot.x + plot.width, y);
                int width = metrics.stringWidth(limit.words());
                boolean above = y < plot.y + plot.height / 2;
                int text = above ? y - Look.px(4) : y + metrics.getAscent() + Look.px(2);
                g.drawString(limit.words(), plot.x + plot.width - width - Look.px(4), text);
            }
        }
        g.setStroke(before);
    }

    private static BasicStroke dashed(int width, int dash) {
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {dash, dash}, 0);
    }

    private void readings() {
        if (picture.columns().isEmpty()) {
            return;
        }
        TraceColumns read = picture.columns().get();
        int thick = Math.max(2, Look.px(2));
        int dot = model.stroke().dots() && read.known() * SPARSE < read.size() ? thick * 3 : thick;
        g.setColor(model.stroke().colour());
        int before = -1;
        for (int i = 0; i < read.size(); i++) {
            if (!read.has(i)) {
                continue;
            }
            int top = y(read.highest(i));
            int bottom = y(read.lowest(i));
            if (before >= 0 && plot.x + i >= seen.x && plot.x + before <= seen.x + seen.width) {
                join(read, before, i, thick);
            }
            if (shown(i) && plot.x + i + thick >= seen.x && plot.x + i <= seen.x + seen.width) {
                g.fillRect(plot.x + i - (dot - thick) / 2, top - dot / 2, dot, bottom - top + dot);
            }
            before = i;
        }
    }

    private boolean shown(int column) {
        return model.stroke().dash() == 0 || column / Look.px(model.stroke().dash()) % 3 != 2;
    }

    /** From the last column with a reading to this one. */
    private void join(TraceColumns read, int from, int to, int thick) {
        int y = y((read.lowest(from) + read.highest(from)) / 2);
        int next = y((read.lowest(to) + read.highest(to)) / 2);
        if (!shown(from)) {
            return;
        }
        for (int offset = 0; offset < thick; offset++) {
            g.drawLine(plot.x + from, y - thick / 2 + offset, plot.x + to, next - thick / 2 + offset);
        }
    }
}
