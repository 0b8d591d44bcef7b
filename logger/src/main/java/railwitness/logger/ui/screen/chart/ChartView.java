package railwitness.logger.ui.screen.chart;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JComponent;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.ChartInk;
import railwitness.logger.reporting.chart.ChartPainter;
import railwitness.logger.reporting.chart.Lettering;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;

/** A picture of lines on the screen; painted anew only when its size, its theme or what it shows has changed. */
public final class ChartView extends JComponent {
    private static final float AXIS = 11.5f;
    private static final float TITLE = 15;

    private transient Optional<Chart> chart = Optional.empty();
    private transient BufferedImage painted;
    private transient Palette paintedIn;

    public ChartView(String name) {
        setName(name);
    }

    public void show(Optional<Chart> wanted) {
        chart = wanted.map(ChartWords::of);
        painted = null;
        setVisible(wanted.isPresent());
        wanted.ifPresent(shown -> getAccessibleContext().setAccessibleName(shown.title()));
        repaint();
    }

    @Override
    protected void paintComponent(Graphics g) {
        if (chart.isEmpty() || getWidth() < 20 || getHeight() < 20) {
            return;
        }
        Palette palette = Look.palette();
        if (isPaintingForPrint()) {
            Graphics2D paper = (Graphics2D) g.create();
            draw(chart.get(), palette, paper);
            paper.dispose();
            return;
        }
        boolean same = painted != null
                && paintedIn == palette
                && painted.getWidth() == getWidth()
                && painted.getHeight() == getHeight();
        if (!same) {
            paint(chart.get(), palette);
        }
        g.drawImage(painted, 0, 0, null);
    }

    private void paint(Chart shown, Palette palette) {
        painted = new BufferedImage(getWidth(), getHeight(), BufferedImage.TYPE_INT_ARGB);
        paintedIn = palette;
        Graphics2D g = painted.createGraphics();
        draw(shown, palette, g);
        g.dispose();
    }

    private void draw(Chart shown, Palette palette, Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        ChartInk ink = new ChartInk(
                Lettering.packed(),
                palette.ink(),
                palette.muted(),
                palette.rule(),
                palette.fault(),
                palette.rails(),
                Look.px(100) * AXIS / 100,
                Look.px(100) * TITLE / 100,
                Locale.getDefault(Locale.Category.FORMAT));
        ChartPainter.draw(shown, ink, g, new Rectangle2D.Double(0, 0, getWidth(), getHeight()));
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(400), Look.px(200));
    }

    @Override
    public javax.accessibility.AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {};
        }
        return accessibleContext;
    }
}
