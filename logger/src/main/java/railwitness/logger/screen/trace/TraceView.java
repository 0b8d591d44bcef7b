package railwitness.logger.screen.trace;

import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.util.Optional;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import railwitness.logger.screen.live.TraceColumns;
import railwitness.logger.screen.paper.Elision;
import railwitness.logger.screen.theme.Look;
import railwitness.logger.screen.theme.Palette;
import railwitness.logger.screen.theme.Type;

/** One trace with its title above it. */
public final class TraceView extends JComponent {
    private static final int TITLE = 28;
    private static final int LEFT = 46;
    private static final int BOTTOM = 20;
    private static final int INSET = 8;

    private transient TraceModel model = TraceModel.empty();
    private transient Optional<TraceColumns> columns = Optional.empty();

    public TraceView(String name) {
        setName(name);
    }

    /** Shows another moment. */
    public void show(TraceModel next) {
        model = next;
        getAccessibleContext().setAccessibleName(next.title());
        getAccessibleContext().setAccessibleDescription(next.value() + ", " + next.remark());
        repaint();
    }

    public TraceModel model() {
        return model;
    }

    private Rectangle box() {
        return new Rectangle(0, Look.px(TITLE), getWidth() - 1, getHeight() - Look.px(TITLE) - 1);
    }

    private Rectangle plot() {
        Rectangle box = box();
        return new Rectangle(
                box.x + Look.px(LEFT),
                box.y + Look.px(INSET),
                box.width - Look.px(LEFT + INSET),
                box.height - Look.px(INSET + BOTTOM));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        title(g, palette);
        Rectangle box = box();
        g.setColor(palette.sheet());
        g.fillRect(box.x, box.y, box.width, box.height);
        g.setColor(palette.rule());
        g.drawRect(box.x, box.y, box.width, box.height);
        Rectangle plot = plot();
        if (plot.width > 10 && plot.height > 10 && !model.spans().isEmpty()) {
            columns = model.readings()
                    .map(readings -> readings.columns(model.fromSeconds(), model.toSeconds(), plot.width));
            new TracePainter(g, palette, model, columns, plot).paint();
        }
        g.dispose();
    }

    private void title(Graphics2D g, Palette palette) {
        int y = Look.px(TITLE - 9);
        g.setFont(Type.HEADING.font());
        g.setColor(palette.ink());
        g.drawString(model.title(), 0, y);
        int x = g.getFontMetrics().stringWidth(model.title()) + Look.px(8);
        g.setFont(Type.TEXT.font());
        g.setColor(palette.muted());
        g.drawString(model.value(), x, y);
        int used = x + g.getFontMetrics().stringWidth(model.value()) + Look.px(16);
        g.setFont(Type.CAPTION.font());
        FontMetrics metrics = g.getFontMetrics();
        String remark = Elision.of(model.remark(), metrics, Math.max(0, getWidth() - used));
        g.drawString(remark, getWidth() - metrics.stringWidth(remark), y);
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(420), Look.px(190));
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(Look.px(200), Look.px(90));
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                @Override
                public AccessibleRole getAccessibleRole() {
                    return AccessibleRole.CANVAS;
                }
            };
        }
        return accessibleContext;
    }
}
