package railwitness.logger.ui.screen.findings;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.util.OptionalDouble;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.verdict.DecisionRule;
import railwitness.analysis.verdict.Limit;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.findings.FigureRow;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.FigureWords;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * How near a figure is to its limits: what is not allowed hatched, the guard band dotted, the limit a line, the value a
 * dot with its expanded uncertainty as whiskers. All in the unit shown.
 *
 * @param guard width of the guard band; zero without one
 */
record LimitStrip(
        double value,
        double expanded,
        OptionalDouble least,
        OptionalDouble most,
        double guard,
        boolean unfit,
        String words)
        implements Cell.Drawing {
    private static final double AIR = 0.35;

    static LimitStrip of(FigureRow finding, Verdict verdict) {
        double scale = FigureWords.of(finding.name()).scale();
        Limit limit = verdict.requirement().limit();
        double expanded = finding.coverage().map(Coverage::expanded).orElse(0.0);
        return new LimitStrip(
                finding.value().orElseThrow().value(),
                expanded,
                scaled(limit.least(), scale),
                scaled(limit.most(), scale),
                verdict.rule() == DecisionRule.GUARD_BAND ? expanded : 0,
                verdict.outcome().unfit(),
                Words.of("strip.words", Words.of("verdict." + verdict.outcome().name())));
    }

    private static OptionalDouble scaled(OptionalDouble value, double scale) {
        return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * scale) : value;
    }

    private double low() {
        double low = Math.min(value - expanded, least.orElse(most.orElse(value)));
        return low - air();
    }

    private double high() {
        double high = Math.max(value + expanded, most.orElse(least.orElse(value)));
        return high + air();
    }

    private double air() {
        double reach = Math.max(value + expanded, most.orElse(least.orElse(value)))
                - Math.min(value - expanded, least.orElse(most.orElse(value)));
        return Math.max(reach, Math.abs(value) * 1e-6 + 1e-12) * AIR;
    }

    @Override
    public void draw(Graphics2D graphics, Rectangle place) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        Palette palette = Look.palette();
        int middle = place.y + place.height / 2;
        int tall = Look.px(8);
        g.setColor(palette.rule());
        g.fillRect(place.x, middle, place.width, 1);
        least.ifPresent(limit -> side(g, palette, place, limit, place.x, -1));
        most.ifPresent(limit -> side(g, palette, place, limit, place.x + place.width, 1));
        g.setColor(unfit ? palette.fault() : palette.ink());
        g.setStroke(new BasicStroke(Look.px(2)));
        int from = x(place, value - expanded);
        int to = x(place, value + expanded);
        if (to - from > Look.px(8)) {
            g.drawLine(from, middle, to, middle);
            g.drawLine(from, middle - tall / 2, from, middle + tall / 2);
            g.drawLine(to, middle - tall / 2, to, middle + tall / 2);
        }
        int dot = Look.px(9);
        g.fillOval(x(place, value) - dot / 2, middle - dot / 2, dot, dot);
        g.dispose();
    }

    /** What is not allowed on one side: hatched beyond the limit, dotted before it as far as the guard band goes. */
    private void side(Graphics2D g, Palette palette, Rectangle place, double limit, int end, int direction) {
        int at = x(place, limit);
        int tall = Look.px(8);
        int middle = place.y + place.height / 2;
        Rectangle beyond = new Rectangle(Math.min(at, end), middle - tall, Math.abs(end - at), 2 * tall);
        hatch(g, palette, beyond);
        int inside = x(place, limit - direction * guard);
        dots(g, palette, new Rectangle(Math.min(at, inside), middle - tall, Math.abs(at - inside), 2 * tall));
        g.setColor(palette.ink());
        g.fillRect(at - Look.px(1), middle - tall - 1, Look.px(2), 2 * tall + 2);
    }

    private static void hatch(Graphics2D g, Palette palette, Rectangle where) {
        Shape before = g.getClip();
        g.clip(where);
        g.setColor(palette.strongRule());
        g.setStroke(new BasicStroke(Look.px(1)));
        for (int x = where.x - where.height; x < where.x + where.width; x += Look.px(6)) {
            g.drawLine(x, where.y + where.height, x + where.height, where.y);
        }
        g.setClip(before);
    }

    private static void dots(Graphics2D g, Palette palette, Rectangle where) {
        g.setColor(palette.muted());
        int dot = Math.max(1, Look.px(1));
        for (int x = where.x + Look.px(2); x < where.x + where.width - 1; x += Look.px(4)) {
            for (int y = where.y + Look.px(1); y < where.y + where.height; y += Look.px(4)) {
                g.fillRect(x, y, dot, dot);
            }
        }
    }

    private int x(Rectangle place, double shown) {
        double share = (shown - low()) / (high() - low());
        return place.x + (int) Math.round(Math.max(0, Math.min(1, share)) * place.width);
    }
}
