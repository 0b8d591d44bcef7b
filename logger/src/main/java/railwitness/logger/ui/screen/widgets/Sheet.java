package railwitness.logger.ui.screen.widgets;

import java.awt.Color;
import java.awt.Graphics;
import java.awt.LayoutManager;
import java.util.function.Function;
import javax.swing.JPanel;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;

/** A piece of paper: one ground of the theme, and hairlines at the edges that are asked for. */
public final class Sheet extends JPanel {
    /** An edge with a hairline. */
    public enum Edge {
        TOP,
        BOTTOM,
        RIGHT
    }

    private transient Function<Palette, Color> ground;
    private final transient java.util.Set<Edge> edges;

    public Sheet(LayoutManager layout, Function<Palette, Color> ground, Edge... edges) {
        super(layout);
        this.ground = ground;
        this.edges = java.util.Set.of(edges);
    }

    public void ground(Function<Palette, Color> wanted) {
        ground = wanted;
        repaint();
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette palette = Look.palette();
        g.setColor(ground.apply(palette));
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setColor(palette.rule());
        if (edges.contains(Edge.TOP)) {
            g.fillRect(0, 0, getWidth(), 1);
        }
        if (edges.contains(Edge.BOTTOM)) {
            g.fillRect(0, getHeight() - 1, getWidth(), 1);
        }
        if (edges.contains(Edge.RIGHT)) {
            g.fillRect(getWidth() - 1, 0, 1, getHeight());
        }
    }
}
