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
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.logger.ui.screen.widgets.Wrapped;

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
        int y = 0;
        g.setColor(palette.ink());
        y = lines(g, Type.HEADING, title, y);
        g.setColor(palette.muted());
        y = lines(g, Type.CAPTION, remark, y) + Look.px(6);
        bars(g, palette, y);
        g.dispose();
    }

    private int lines(Graphics2D g, Type type, String text, int top) {
        g.setFont(type.font());
        FontMetrics metrics = g.getFontMetrics();
        int y = top;
        for (String line : Wrapped.of(text, metrics, getWidth())) {
            g.drawString(line, 0, y + metrics.getAscent());
            y += metrics.getHeight();
        }
        return y;
    }

    /** Three inks, none of them a rail's: what stays, what goes with the current, what goes with its square. */
    private void bars(Graphics2D g, Palette palette, int top) {
        double sum =
                parts.stream().mapToDouble(part -> Math.max(0, part.value())).sum();
        List<Color> colours = List.of(palette.ink(), palette.muted(), palette.strongRule());
        FontMetrics metrics = g.getFontMetrics();
        int x = 0;
        int legend = top + Look.px(24 + 8);
        for (int i = 0; i < parts.size(); i++) {
            int width = sum > 0 ? (int) Math.round(Math.max(0, parts.get(i).value()) / sum * getWidth()) : 0;
            g.setColor(colours.get(i));
            g.fillRect(x, top, Math.max(0, width - Look.px(2)), Look.px(24));
            x += width;
            int base = legend + i * metrics.getHeight() + metrics.getAscent();
            g.fillRect(0, base - Look.px(10), Look.px(11), Look.px(11));
            g.setColor(palette.ink());
            g.drawString(Words.of(PARTS.get(i), Numbers.fixed(parts.get(i).value(), 1)), Look.px(17), base);
        }
    }

    private int high(Type type, String text) {
        FontMetrics metrics = getFontMetrics(type.font());
        return (getWidth() > 0 ? Wrapped.of(text, metrics, getWidth()).size() : 1) * metrics.getHeight();
    }

    @Override
    public Dimension getPreferredSize() {
        int legend = PARTS.size() * getFontMetrics(Type.CAPTION.font()).getHeight();
        int words = high(Type.HEADING, title) + high(Type.CAPTION, remark);
        return new Dimension(Look.px(240), words + Look.px(6 + 24 + 8 + 4) + legend);
    }

    @Override
    public javax.accessibility.AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {};
        }
        return accessibleContext;
    }
}
