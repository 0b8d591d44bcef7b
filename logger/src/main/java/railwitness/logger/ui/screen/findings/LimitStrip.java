package railwitness.logger.ui.screen.findings;

import java.awt.BasicStroke;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.util.Optional;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.verdict.DecisionRule;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.findings.FigureRow;
import railwitness.logger.reporting.findings.LimitShare;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.FigureWords;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * How much of its limit a figure uses, on one scale for all of them, 0 to 150 %: what is not allowed hatched, the guard
 * band dotted, the limit a line, the value a dot with its expanded uncertainty as whiskers, what is expected a span of
 * pencil. All as shares of the limit.
 *
 * @param low end of the whiskers
 * @param high the other end
 * @param guard width of the guard band; zero without one
 * @param expected middle and half width; empty where nothing is
 */
record LimitStrip(
        double value, double low, double high, double guard, Optional<double[]> expected, boolean unfit, String words)
        implements Cell.Drawing {
    /** The scale ends here, as a share of the limit. */
    static final double END = 1.5;

    private static final double BEYOND = 1.47;

    static LimitStrip of(FigureRow finding, Verdict verdict) {
        FigureWords shown = FigureWords.of(finding.name());
        LimitShare share = LimitShare.of(
                verdict.requirement().limit(), shown.scale(), shown.unit().equals("%"));
        double value = finding.value().orElseThrow().value();
        double expanded = finding.coverage().map(Coverage::expanded).orElse(0.0);
        double one = share.of(value - expanded);
        double other = share.of(value + expanded);
        double guard = verdict.rule() == DecisionRule.GUARD_BAND && expanded > 0
                ? verdict.requirement()
                                .limit()
                                .guardBand(finding.figure().orElseThrow().value())
                        * finding.unit().factor()
                : 0;
        return new LimitStrip(
                share.of(value),
                Math.min(Math.min(one, other), share.of(value)),
                Math.max(Math.max(one, other), share.of(value)),
                Math.abs(share.of(value + guard) - share.of(value - guard)) / 2,
                finding.expected().map(of -> span(share, of)),
                verdict.outcome().unfit(),
                Words.of("strip.words", Words.of("verdict." + verdict.outcome().name())));
    }

    private static double[] span(LimitShare share, Estimate expected) {
        double wide = expected.known() && expected.u() > 0
                ? expected.coverage(FigureRow.PROBABILITY).expanded()
                : 0;
        double one = share.of(expected.value() - wide);
        double other = share.of(expected.value() + wide);
        return new double[] {share.of(expected.value()), Math.abs(one - other) / 2};
    }

    @Override
    public void draw(Graphics2D graphics, Rectangle place) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        int middle = place.y + place.height / 2;
        int tall = Look.px(8);
        g.setColor(palette.rule());
        g.fillRect(place.x, middle, place.width, 1);
        for (double mark : new double[] {0, 0.5}) {
            g.fillRect(x(place, mark), middle - tall / 2, 1, tall);
        }
        limit(g, palette, place, middle, tall);
        expected.ifPresent(span -> pencil(g, palette, place, middle, span));
        g.setColor(unfit ? palette.fault() : palette.ink());
        if (!(value <= BEYOND)) {
            beyond(g, place, middle);
        } else {
            dot(g, place, middle, tall);
        }
        g.dispose();
    }

    private void limit(Graphics2D g, Palette palette, Rectangle place, int middle, int tall) {
        int at = x(place, 1);
        hatch(g, palette, new Rectangle(at, middle - tall, place.x + place.width - at, 2 * tall));
        int inside = x(place, 1 - guard);
        dots(g, palette, new Rectangle(inside, middle - tall, at - inside, 2 * tall));
        g.setColor(palette.ink());
        g.fillRect(at - Look.px(1), middle - tall - 1, Look.px(2), 2 * tall + 2);
    }

    private static void pencil(Graphics2D g, Palette palette, Rectangle place, int middle, double[] span) {
        int from = x(place, span[0] - span[1]);
        int to = x(place, span[0] + span[1]);
        g.setColor(new java.awt.Color(
                palette.pencil().getRed(),
                palette.pencil().getGreen(),
                palette.pencil().getBlue(),
                51));
        g.fillRect(from, middle - Look.px(7), Math.max(1, to - from), Look.px(14));
        g.setColor(palette.pencil());
        g.setStroke(new BasicStroke(Math.max(1, Look.px(1))));
        int at = x(place, span[0]);
        g.drawLine(at - Look.px(2), middle + Look.px(7), at + Look.px(3), middle - Look.px(7));
    }

    private void dot(Graphics2D g, Rectangle place, int middle, int tall) {
        g.setStroke(new BasicStroke(Look.px(2)));
        int from = x(place, low);
        int to = x(place, high);
        if (to - from > Look.px(10)) {
            g.drawLine(from, middle, to, middle);
            g.drawLine(from, middle - tall / 2, from, middle + tall / 2);
            g.drawLine(to, middle - tall / 2, to, middle + tall / 2);
        }
        int dot = Look.px(9);
        g.fillOval(x(place, value) - dot / 2, middle - dot / 2, dot, dot);
    }

    /** An arrow head and the number in place of a dot that has no place on the scale. */
    private void beyond(Graphics2D g, Rectangle place, int middle) {
        int right = place.x + place.width;
        int size = Look.px(6);
        g.fillPolygon(
                new int[] {right - size * 2, right, right - size * 2},
                new int[] {middle - size, middle, middle + size},
                3);
        if (Double.isFinite(value)) {
            g.setFont(Type.AXIS.font());
            FontMetrics metrics = g.getFontMetrics();
            String words = Numbers.fixed(value * 100, 0) + " %";
            int wide = metrics.stringWidth(words);
            int x = right - size * 2 - Look.px(4) - wide;
            java.awt.Color ink = g.getColor();
            g.setColor(Look.palette().sheet());
            g.fillRect(x - Look.px(2), middle - Look.px(7), wide + Look.px(4), Look.px(14));
            g.setColor(ink);
            g.drawString(words, x, middle + metrics.getAscent() / 2 - Look.px(1));
        }
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

    private static int x(Rectangle place, double share) {
        double at = Double.isNaN(share) ? 0 : Math.max(0, Math.min(END, share)) / END;
        return place.x + (int) Math.round(at * place.width);
    }
}
