package railwitness.logger.ui.screen.trace;

import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.util.Optional;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;

/** The plot of one trace: of each moment only what has changed is painted. */
final class TracePlot extends JComponent {
    static final int LEFT = 46;
    private static final int BOTTOM = 20;
    static final int INSET = 8;
    private static final int LEAST = 10;

    private transient TraceModel model = TraceModel.empty();
    private transient Optional<TracePicture> picture = Optional.empty();

    TracePlot() {
        setOpaque(true);
    }

    void show(TraceModel next) {
        model = next;
        Optional<TracePicture> before = picture;
        picture = picture();
        if (picture.isEmpty() || before.isEmpty()) {
            if (picture.isPresent() != before.isPresent()) {
                repaint();
            }
            return;
        }
        TracePicture now = picture.get();
        now.changedSince(before.get()).ifPresent(place -> {
            if (place.equals(now.plot())) {
                repaint();
            } else {
                repaint(place);
            }
        });
    }

    TraceModel model() {
        return model;
    }

    private Optional<TracePicture> picture() {
        Rectangle plot = plot();
        return plot.width > LEAST && plot.height > LEAST && !model.bare()
                ? Optional.of(TracePicture.of(model, plot, picture))
                : Optional.empty();
    }

    /** Which moment stands at this place, s of the session. */
    double secondsAt(int x) {
        Rectangle plot = plot();
        double share = (x - plot.x) / (double) Math.max(1, plot.width);
        return model.fromSeconds() + Math.max(0, Math.min(1, share)) * (model.toSeconds() - model.fromSeconds());
    }

    /** Columns of pixels it has. */
    int columns() {
        return Math.max(1, plot().width);
    }

    private Rectangle plot() {
        return new Rectangle(
                Look.px(LEFT),
                Look.px(INSET),
                getWidth() - 1 - Look.px(LEFT + INSET),
                getHeight() - 1 - Look.px(INSET + (model.spans().isEmpty() ? INSET : BOTTOM)));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        if (picture.isEmpty() || !picture.get().plot().equals(plot())) {
            picture = picture();
        }
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        g.setColor(palette.sheet());
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setColor(palette.rule());
        g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
        picture.ifPresent(shown -> new TracePainter(g, palette, shown).paint());
        g.dispose();
    }
}
