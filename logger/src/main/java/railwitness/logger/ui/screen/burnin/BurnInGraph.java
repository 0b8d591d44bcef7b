package railwitness.logger.ui.screen.burnin;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.accessibility.AccessibleContext;
import javax.swing.JComponent;
import railwitness.logger.reporting.findings.BurnIn;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/** Three graphs over one axis of hours: temperatures, drift of the rails, efficiency; what happened stands below it. */
final class BurnInGraph extends JComponent {
    private static final int LEFT = 52;
    private static final int RIGHT = 16;
    private static final int FOOT = 74;
    private static final int HEAD = 26;
    private static final int LEAST_HEIGHT = 340;
    private static final double FAR_LIMIT = 1;
    private static final double[] HEIGHTS = {0.56, 0.24, 0.20};

    private transient Optional<BurnIn> shown = Optional.empty();

    BurnInGraph() {
        setName("burn-in graph");
    }

    void show(Optional<BurnIn> wanted) {
        shown = wanted;
        wanted.ifPresent(view -> getAccessibleContext().setAccessibleName(String.join(" ", view.sentences())));
        repaint();
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(640), Look.px(LEAST_HEIGHT));
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(Look.px(200), Look.px(LEAST_HEIGHT));
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {};
        }
        return accessibleContext;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        if (shown.isEmpty() || getWidth() < 200 || getHeight() < 200) {
            return;
        }
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        new Painter(g, shown.get()).paint();
        g.dispose();
    }

    /** One painting. */
    private final class Painter {
        private final Graphics2D g;
        private final BurnIn view;
        private final Palette palette = Look.palette();
        private final double left = Look.px(LEFT);
        private final double right;
        private final double bottom = getHeight() - Look.px(FOOT);
        private double top;
        private double height;
        private double low;
        private double high;

        Painter(Graphics2D g, BurnIn view) {
            this.g = g;
            this.view = view;
            this.right = getWidth() - margin();
        }

        /** As much as the longest words beside the graphs need. */
        private double margin() {
            g.setFont(Type.CAPTION.font().deriveFont(java.awt.Font.ITALIC));
            double widest = java.util.stream.Stream.concat(
                            view.foretold().stream().map(BurnIn.Foretold::words),
                            view.drifts().stream().map(BurnIn.Line::name))
                    .mapToDouble(g.getFontMetrics()::stringWidth)
                    .max()
                    .orElse(0);
            return widest + Look.px(RIGHT);
        }

        void paint() {
            double all = bottom;
            double y = 0;
            for (int i = 0; i < HEIGHTS.length; i++) {
                top = y + Look.px(HEAD);
                height = all * HEIGHTS[i] - Look.px(HEAD) - Look.px(6);
                switch (i) {
                    case 0 -> temperatures();
                    case 1 -> drifts();
                    default -> efficiency();
                }
                y += all * HEIGHTS[i];
            }
            axis();
        }

        private double x(double hours) {
            return left + (right - left) * hours / Math.max(view.end(), 1e-9);
        }

        private double y(double value) {
            return top + height * (1 - (value - low) / (high - low));
        }

        private void scale(Supplier<java.util.stream.DoubleStream> values) {
            low = values.get().min().orElse(0);
            high = values.get().max().orElse(1);
            double room = Math.max((high - low) * 0.08, 1e-6 + Math.abs(high) * 1e-5);
            low -= room;
            high += room;
        }

        private void head(String title, String unit) {
            g.setFont(Type.CAPTION_STRONG.font());
            g.setColor(palette.ink());
            g.drawString(title, Look.px(2), (float) top - Look.px(9));
            double width = g.getFontMetrics().stringWidth(title);
            g.setFont(Type.CAPTION.font());
            g.setColor(palette.muted());
            g.drawString(", " + unit, (float) (Look.px(2) + width), (float) top - Look.px(9));
        }

        private void grid() {
            upright();
            g.setFont(Type.AXIS.font());
            double step = step((high - low) / Math.max(3.5, height / Look.px(44)));
            step = (high - low) / step < 3 && height * finer(step) / (high - low) > Look.px(15) ? finer(step) : step;
            int places = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
            for (double value = Math.ceil(low / step) * step; value <= high; value += step) {
                g.setColor(palette.rule());
                g.setStroke(new BasicStroke(1));
                line(left, y(value), right, y(value));
                g.setColor(palette.muted());
                String words = Numbers.fixed(value + 0.0, places);
                g.drawString(
                        words,
                        (float) (left - g.getFontMetrics().stringWidth(words) - Look.px(8)),
                        (float) y(value) + Look.px(4));
            }
        }

        /** Upright lines at the times that the axis names. */
        private void upright() {
            g.setColor(palette.rule());
            g.setStroke(new BasicStroke(1));
            for (double value = 0; value * unit() <= view.end() * 1.0001; value += timeStep()) {
                line(x(value * unit()), top, x(value * unit()), top + height);
            }
        }

        /** Hours in one unit of the axis: minutes, hours or days. */
        private double unit() {
            return view.end() < 2 ? 1 / 60.0 : view.end() > 60 ? 24 : 1;
        }

        private double timeStep() {
            return step(view.end() / unit() / 6);
        }

        /** The next smaller of 1, 2, 5, 10 ... */
        private double finer(double step) {
            double mantissa = step / Math.pow(10, Math.floor(Math.log10(step) + 1e-9));
            return Math.round(mantissa) == 5 ? step * 0.4 : step / 2;
        }

        private double step(double wanted) {
            double base = Math.pow(10, Math.floor(Math.log10(Math.max(wanted, 1e-12))));
            double share = wanted / base;
            return base * (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10);
        }

        private void temperatures() {
            scale(() -> java.util.stream.DoubleStream.concat(
                    view.temperatures().stream().flatMapToDouble(one -> java.util.stream.DoubleStream.of(one.y())),
                    view.foretold().stream().flatMapToDouble(one -> java.util.stream.DoubleStream.of(one.middle()))));
            double limitAt = view.hottest().orElse(low);
            boolean far = limitAt > high + FAR_LIMIT * (high - low);
            high += far ? Look.px(22) / height * (high - low) : 0; // room for the words about it
            high = far || limitAt <= high ? high : limitAt + 0.08 * (limitAt - low);
            head(Words.of("burnin.temperatures"), "\u00b0C");
            grid();
            view.foretold().forEach(this::foretold);
            view.hottest().ifPresent(limit -> limit(limit, far));
            List<BurnIn.Line> lines = view.temperatures();
            for (int i = 0; i < lines.size(); i++) {
                curve(lines.get(i), palette.ink(), i == 0 ? 2f : 1.2f);
                named(lines.get(i), palette.ink());
            }
        }

        /** A limit far above what is drawn is said and not drawn: the curves keep a scale of their own. */
        private void limit(double limit, boolean far) {
            g.setColor(palette.fault());
            g.setFont(Type.AXIS.font());
            if (far) {
                String words = Words.of("burnin.limit.far", Numbers.fixed(limit, 0));
                double from =
                        Math.max(left + Look.px(4), right - g.getFontMetrics().stringWidth(words));
                g.drawString(words, (float) from, (float) top + Look.px(5));
                return;
            }
            g.setStroke(dashed(1.2f, 7, 4));
            line(left, y(limit), right, y(limit));
            g.drawString(
                    Words.of("burnin.limit", Numbers.fixed(limit, 0)),
                    (float) left + Look.px(6),
                    (float) y(limit) + Look.px(14));
        }

        private void foretold(BurnIn.Foretold way) {
            Path2D band = new Path2D.Double();
            for (int i = 0; i < way.x().length; i++) {
                point(band, i == 0, way.x()[i], clipped(way.high()[i]));
            }
            for (int i = way.x().length - 1; i >= 0; i--) {
                band.lineTo(x(way.x()[i]), y(clipped(way.low()[i])));
            }
            band.closePath();
            Color pencil = palette.pencil();
            g.setColor(new Color(pencil.getRed(), pencil.getGreen(), pencil.getBlue(), 51));
            g.fill(band);
            g.setColor(pencil);
            g.setStroke(dashed(1.3f, 5, 4));
            g.draw(path(way.x(), way.middle()));
            g.setFont(Type.CAPTION.font().deriveFont(java.awt.Font.ITALIC));
            double at = y(way.middle()[way.middle().length - 1]);
            g.drawString(way.words(), (float) right + Look.px(10), (float) at + Look.px(4));
        }

        private double clipped(double value) {
            return Math.max(low, Math.min(high, value));
        }

        private void drifts() {
            scale(() -> view.drifts().stream().flatMapToDouble(one -> java.util.stream.DoubleStream.of(one.y())));
            head(Words.of("burnin.drift"), Words.of("burnin.drift.unit"));
            grid();
            for (int i = 0; i < view.drifts().size(); i++) {
                g.setStroke(i == 0 ? new BasicStroke(2) : dashed(2, 11, 3));
                g.setColor(palette.rail(i));
                BurnIn.Line one = view.drifts().get(i);
                g.draw(path(one.x(), one.y()));
                g.setFont(Type.AXIS.font());
                g.drawString(one.name(), (float) right + Look.px(10), (float) top + Look.px(14) + Look.px(15) * i);
            }
        }

        private void efficiency() {
            view.efficiency().ifPresent(line -> {
                scale(() -> java.util.stream.DoubleStream.of(line.y()));
                head(Words.of("burnin.efficiency"), "%");
                grid();
                curve(line, palette.ink(), 1.3f);
            });
        }

        private void curve(BurnIn.Line line, Color colour, float width) {
            g.setColor(colour);
            g.setStroke(new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            g.draw(path(line.x(), line.y()));
        }

        private void named(BurnIn.Line line, Color colour) {
            if (line.x().length > 4) {
                int at = line.x().length / 4;
                g.setColor(colour);
                g.setFont(Type.CAPTION.font());
                g.drawString(line.name(), (float) x(line.x()[at]) + Look.px(8), (float) y(line.y()[at]) + Look.px(18));
            }
        }

        private Path2D path(double[] xs, double[] ys) {
            Path2D path = new Path2D.Double();
            for (int i = 0; i < xs.length; i++) {
                point(path, i == 0, xs[i], ys[i]);
            }
            return path;
        }

        private void point(Path2D path, boolean first, double hours, double value) {
            if (first) {
                path.moveTo(x(hours), y(value));
            } else {
                path.lineTo(x(hours), y(value));
            }
        }

        private void axis() {
            g.setColor(palette.strongRule());
            g.setStroke(new BasicStroke(1));
            line(left, bottom, right, bottom);
            double unit = unit();
            String word = unit < 1 ? "min" : unit > 1 ? "d" : "h";
            double step = timeStep();
            g.setFont(Type.AXIS.font());
            for (double value = 0; value * unit <= view.end() * 1.0001; value += step) {
                g.setColor(palette.muted());
                String words = Numbers.plain(Math.round(value * 100) / 100.0) + " " + word;
                g.drawString(
                        words,
                        (float) (x(value * unit) - g.getFontMetrics().stringWidth(words) / 2.0),
                        (float) bottom + Look.px(15));
            }
            now();
            marks();
        }

        private void now() {
            if (view.end() > view.now() * 1.0001) {
                g.setColor(palette.ink());
                line(x(view.now()), Look.px(10), x(view.now()), bottom);
                view.known().ifPresent(at -> {
                    if (at > view.now() && at < view.end()) {
                        g.setColor(palette.pencil());
                        g.setStroke(dashed(1.2f, 2, 3));
                        line(x(at), Look.px(40), x(at), bottom);
                        g.setFont(Type.AXIS.font().deriveFont(java.awt.Font.ITALIC));
                        g.drawString(Words.of("burnin.known"), (float) x(at) + Look.px(6), (float) bottom - Look.px(6));
                    }
                });
            }
        }

        /** Each beside its stroke; what would cover the one before goes a line lower. */
        private void marks() {
            g.setFont(Type.CAPTION.font());
            double[] free = {-1e9, -1e9, -1e9};
            for (BurnIn.Mark mark : view.marks()) {
                double at = x(Math.min(mark.at(), view.end()));
                int row = 0;
                while (row < free.length - 1 && at < free[row]) {
                    row++;
                }
                if (at < free[row]) {
                    continue;
                }
                double y = bottom + Look.px(34 + 17 * row);
                g.setColor(palette.ink());
                g.setStroke(new BasicStroke(1.2f));
                line(at, bottom + Look.px(20), at, y + Look.px(3));
                g.drawString(mark.words(), (float) at + Look.px(5), (float) y);
                free[row] = at + g.getFontMetrics().stringWidth(mark.words()) + Look.px(14);
            }
        }

        private void line(double x1, double y1, double x2, double y2) {
            g.draw(new java.awt.geom.Line2D.Double(x1, y1, x2, y2));
        }

        private BasicStroke dashed(float width, float on, float off) {
            return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {on, off}, 0);
        }
    }
}
