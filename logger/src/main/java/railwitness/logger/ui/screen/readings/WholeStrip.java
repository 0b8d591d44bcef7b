package railwitness.logger.ui.screen.readings;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.trace.TraceColumns;
import railwitness.logger.ui.screen.trace.TraceView;

/** All of the session in one strip, with the stretch that is looked at; a click goes there. */
final class WholeStrip extends JComponent {
    private static final int LEAST_MARK = 3;

    private transient Reach reach = Reach.all(1);
    private transient Optional<DrawnChannel> drawn = Optional.empty();

    /** @param wanted told the moment that was clicked, s */
    WholeStrip(DoubleConsumer wanted) {
        MouseAdapter mouse = new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                double share = (e.getX() - left()) / (double) Math.max(1, width());
                wanted.accept(Math.max(0, Math.min(1, share)) * reach.whole());
            }

            @Override
            public void mouseDragged(MouseEvent e) {
                mousePressed(e);
            }
        };
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
    }

    void show(Reach wanted) {
        if (!wanted.equals(reach)) {
            reach = wanted;
            repaint();
        }
    }

    void show(Optional<DrawnChannel> whole) {
        drawn = whole;
        repaint();
    }

    private static int left() {
        return TraceView.left();
    }

    private int width() {
        return getWidth() - left() - TraceView.right();
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette palette = Look.palette();
        g.setColor(palette.sheet());
        g.fillRect(left(), 0, width(), getHeight() - 1);
        int from = left() + (int) Math.floor(reach.from() / reach.whole() * width());
        int seen = Math.max(LEAST_MARK, (int) Math.ceil(reach.length() / reach.whole() * width()));
        g.setColor(palette.tint());
        g.fillRect(from, 0, seen, getHeight() - 1);
        g.setColor(palette.muted());
        drawn.ifPresent(channel -> curve(g, channel));
        g.setColor(palette.rule());
        g.drawRect(left(), 0, width(), getHeight() - 1);
        g.setColor(palette.ink());
        g.drawRect(from, 0, seen, getHeight() - 1);
    }

    private void curve(Graphics g, DrawnChannel channel) {
        TraceColumns columns = channel.columns(0, reach.whole(), Math.max(1, width()), 1);
        double low = channel.lowest();
        double high = Math.max(channel.highest(), low + 1e-9);
        int room = getHeight() - Look.px(8);
        int before = -1;
        int last = 0;
        for (int i = 0; i < columns.size(); i++) {
            if (columns.has(i)) {
                int top = Look.px(4) + (int) Math.round((high - columns.highest(i)) / (high - low) * room);
                int bottom = Look.px(4) + (int) Math.round((high - columns.lowest(i)) / (high - low) * room);
                if (before >= 0) {
                    g.drawLine(left() + before, last, left() + i, top);
                }
                g.drawLine(left() + i, top, left() + i, bottom);
                before = i;
                last = bottom;
            }
        }
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(200), Look.px(40));
    }
}
