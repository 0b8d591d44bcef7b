package railwitness.logger.ui.screen.findings;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import railwitness.analysis.supply.LossSplit;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.Points;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Elision;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/** Where the loss goes at full load, as the points tell: its parts side by side. */
final class LossBar extends JComponent {
    private static final List<String> PARTS = List.of("loss.fixed", "loss.current", "loss.square");

    private transient List<Estimate> parts = List.of();
    private String title = "";
    private String remark = "";

    LossBar() {
        setName("losses");
    }

    void show(SessionFindings session) {
        Optional<OperatingPoint> full = new Points(session.findings().points(), session.design()).fullLoad();
        Optional<LossSplit> split = session.findings().lossSplit();
        boolean known = full.isPresent() && split.filter(LossSplit::physical).isPresent();
        setVisible(known);
        if (known) {
            show(full.get(), split.get());
        }
        repaint();
    }

    private void show(OperatingPoint full, LossSplit split) {
        double amps = Estimate.sum(
                        full.rails().values().stream().map(RailPoint::current).toList())
                .value();
        parts = split.at(amps);
        title = Words.of("loss.title", Numbers.fixed(full.loss().value(), 1));
        remark = Words.of("loss.remark", Numbers.fixed(full.input().power().value(), 0));
        getAccessibleContext().setAccessibleName(title);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        g.setFont(Type.HEADING.font());
        g.setColor(palette.ink());
        g.drawString(title, 0, Look.px(16));
        g.setFont(Type.CAPTION.font());
        g.setColor(palette.muted());
        FontMetrics metrics = g.getFontMetrics();
        g.drawString(remark, getWidth() - metrics.stringWidth(remark), Look.px(16));
        bars(g, palette);
        g.dispose();
    }

    private void bars(Graphics2D g, Palette palette) {
        double sum =
                parts.stream().mapToDouble(part -> Math.max(0, part.value())).sum();
        List<Color> colours = List.of(palette.rail(0), palette.muted(), palette.rail(1));
        FontMetrics metrics = g.getFontMetrics();
        int x = 0;
        int each = getWidth() / PARTS.size();
        for (int i = 0; i < parts.size(); i++) {
            int width = sum > 0 ? (int) Math.round(Math.max(0, parts.get(i).value()) / sum * getWidth()) : 0;
            g.setColor(colours.get(i));
            g.fillRect(x, Look.px(28), Math.max(0, width - Look.px(2)), Look.px(24));
            x += width;
            int base = Look.px(28 + 24 + 20);
            g.fillRect(i * each, base - Look.px(10), Look.px(11), Look.px(11));
            g.setColor(palette.ink());
            String words = Words.of(PARTS.get(i), Numbers.fixed(parts.get(i).value(), 1));
            g.drawString(Elision.of(words, metrics, each - Look.px(20)), i * each + Look.px(17), base);
        }
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(400), Look.px(84));
    }

    @Override
    public javax.accessibility.AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {};
        }
        return accessibleContext;
    }
}
