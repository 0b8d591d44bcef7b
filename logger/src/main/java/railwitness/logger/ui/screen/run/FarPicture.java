package railwitness.logger.ui.screen.run;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.util.List;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Wrapped;

/**
 * Paints what is read from two metres. All sizes are parts of the place, so that they grow with the window: at 1600 pixels
 * on 24 inches a live value is 36 mm of type.
 */
final class FarPicture {
    private static final double WIDTH = 1256;
    private static final double HEIGHT = 684;
    private static final double LIVE = 112;
    private static final double LOAD = 84;
    private static final double EXPECTED = 64;
    private static final double TITLE = 46;
    private static final double WORDS = 40;
    private static final double LINES = 384;
    private static final double ROW = 128;
    private static final double MOST_LIVE = 400;

    private final Graphics2D g;
    private final Palette palette;
    private final Rectangle place;
    private final double unit;
    private final double row;

    /** @param place without the column at its left */
    FarPicture(Graphics2D g, Palette palette, Rectangle place, int lines) {
        this.g = g;
        this.palette = palette;
        this.place = place;
        this.unit = Math.min(place.width / WIDTH, place.height / HEIGHT);
        this.row = Math.min(ROW, LINES / Math.max(3, lines)) * Math.max(1, place.height / HEIGHT / unit);
    }

    private int px(double base) {
        return (int) Math.round(base * unit);
    }

    private Font font(Type like, double size) {
        return like.font().deriveFont((float) (size * unit));
    }

    private int x(double base) {
        return place.x + px(base);
    }

    private int right() {
        return place.x + place.width - px(28);
    }

    void paint(FarModel model) {
        int top = place.y + px(14);
        double scale = Math.min(1, row / ROW);
        int lines = px(row * model.lines().size() + 118);
        g.setColor(palette.live());
        g.fillRect(x(20), top, px(10), lines);
        int ofWide = metrics(Type.TEXT, WORDS).stringWidth(model.of());
        String title = fitted(model.step(), right() - x(48) - ofWide - px(30));
        text(Type.TITLE, TITLE, palette.ink(), title, x(48), top + px(46), false);
        text(Type.TEXT, WORDS, palette.muted(), model.of(), right(), top + px(44), true);
        int head = top + px(98);
        text(Type.TEXT, WORDS, palette.muted(), words("far.now"), x(535), head, true);
        text(Type.PENCIL_TEXT, WORDS, palette.muted(), words("far.expected"), x(792), head, true);
        text(Type.TEXT, WORDS, palette.muted(), words("far.limit"), x(836), head, false);
        g.setColor(palette.strongRule());
        g.fillRect(x(48), top + px(112), right() - x(48), 1);
        int y = top + px(114);
        for (FarModel.Line line : model.lines()) {
            line(line, y + (px(row) - px(ROW * scale)) / 2, scale);
            g.setColor(palette.rule());
            g.fillRect(x(48), y + px(row) - 1, right() - x(48), 1);
            y += px(row);
        }
        foot(model, y + px(14));
    }

    private static String words(String key) {
        return railwitness.logger.ui.screen.widgets.Words.of(key);
    }

    private void line(FarModel.Line line, int top, double scale) {
        int base = top + px(94 * scale);
        Color own = line.beyond() ? palette.fault() : line.colour() < 0 ? palette.input() : palette.rail(line.colour());
        double live = narrowed(LIVE * scale, line.now(), px(MOST_LIVE));
        int left = px(535 - 48 - 12) - metrics(Type.TITLE, live).stringWidth(line.now());
        double name = narrowed(TITLE * scale, line.name(), left);
        text(Type.TITLE, name, own, line.name(), x(48), top + px(78 * scale), false);
        Color ink = line.beyond() ? palette.fault() : palette.ink();
        text(Type.TITLE, live, ink, line.now(), x(535), base, true);
        text(Type.TEXT, WORDS * scale, palette.muted(), line.unit(), x(548), base, false);
        boolean two = !line.difference().isEmpty();
        text(
                Type.PENCIL_TEXT,
                EXPECTED * scale,
                palette.pencil(),
                line.expected(),
                x(792),
                top + px((two ? 56 : 86) * scale),
                true);
        double beside = narrowed(38 * scale, line.difference(), px(792 - 548 - 40));
        text(Type.TEXT, beside, palette.muted(), line.difference(), x(792), top + px(112 * scale), true);
        Rectangle strip = new Rectangle(x(836), top + px(12 * scale), right() - x(836), px(58 * scale));
        strip(line, strip);
        Color tell = line.beyond() ? palette.fault() : palette.ink();
        double room = narrowed(WORDS * scale, line.room(), right() - x(836));
        text(Type.TEXT, room, tell, line.room(), x(836), top + px(112 * scale), false);
    }

    /** What is not allowed is hatched, the limit a line, now a dot, expected a slanted stroke of pencil. */
    private void strip(FarModel.Line line, Rectangle where) {
        FarModel.Strip strip = line.strip();
        if (strip.low().isEmpty() && strip.high().isEmpty()) {
            return;
        }
        double high = strip.high().orElse(strip.low().orElse(0) * 1.5);
        double low = strip.low().orElse(0);
        double air = Math.max(high - low, 1e-9) * 0.18;
        double from = strip.low().isPresent() ? low - air : 0;
        double to = high + air;
        int middle = where.y + where.height / 2;
        g.setColor(palette.strongRule());
        g.fillRect(where.x, middle, where.width, 1);
        if (strip.low().isPresent()) {
            hatch(new Rectangle(where.x, where.y, at(where, low, from, to) - where.x, where.height));
            limit(where, at(where, low, from, to));
        }
        if (strip.high().isPresent()) {
            int end = at(where, high, from, to);
            hatch(new Rectangle(end, where.y, where.x + where.width - end, where.height));
            limit(where, end);
        }
        if (strip.expected().isPresent()) {
            int expected = at(where, strip.expected().getAsDouble(), from, to);
            g.setColor(palette.pencil());
            g.setStroke(new BasicStroke(Math.max(2, px(4))));
            g.drawLine(expected - px(5), where.y + where.height - px(6), expected + px(5), where.y + px(6));
        }
        if (strip.now().isPresent()) {
            int dot = px(26);
            g.setColor(line.beyond() ? palette.fault() : palette.ink());
            g.fillOval(at(where, strip.now().getAsDouble(), from, to) - dot / 2, middle - dot / 2, dot, dot);
        }
    }

    private static int at(Rectangle where, double value, double from, double to) {
        double share = Math.max(0, Math.min(1, (value - from) / (to - from)));
        return where.x + (int) Math.round(share * where.width);
    }

    private void limit(Rectangle where, int x) {
        g.setColor(palette.ink());
        g.fillRect(x - px(2), where.y - px(2), Math.max(2, px(4)), where.height + px(4));
    }

    private void hatch(Rectangle where) {
        Shape before = g.getClip();
        g.clip(where);
        g.setColor(palette.strongRule());
        g.setStroke(new BasicStroke(Math.max(1, px(2))));
        for (int x = where.x - where.height; x < where.x + where.width; x += Math.max(4, px(14))) {
            g.drawLine(x, where.y + where.height, x + where.height, where.y);
        }
        g.setClip(before);
    }

    private void foot(FarModel model, int top) {
        int label = top + px(38);
        int base = Math.min(label + px(80), place.y + place.height - px(10));
        if (!model.load().isEmpty()) {
            text(Type.TEXT, WORDS, palette.muted(), words("far.load"), x(48), label, false);
        }
        text(Type.TEXT, WORDS, palette.muted(), model.doing(), right(), label, true);
        text(Type.TITLE, LOAD, palette.ink(), model.left(), right(), base, true);
        int leftOver = right() - metrics(Type.TITLE, LOAD).stringWidth(model.left()) - px(30) - x(48);
        FontMetrics big = metrics(Type.TITLE, LOAD);
        if (big.stringWidth(model.load()) <= leftOver) {
            text(Type.TITLE, LOAD, palette.ink(), model.load(), x(48), base, false);
            int used = model.load().isEmpty() ? 0 : big.stringWidth(model.load()) + px(28);
            if (metrics(Type.TEXT, 46).stringWidth(model.loads()) <= leftOver - used) {
                text(Type.TEXT, 46, palette.ink(), model.loads(), x(48) + used, base, false);
            }
        }
    }

    /** The size, or what of it has its place. */
    private double narrowed(double size, String words, int width) {
        int natural = metrics(Type.TITLE, size).stringWidth(words);
        return natural <= width || natural == 0 ? size : size * Math.max(1, width) / natural;
    }

    private FontMetrics metrics(Type like, double size) {
        return g.getFontMetrics(font(like, size));
    }

    /** The first line of it that has its place; a step's name says the most at its beginning. */
    private String fitted(String words, int width) {
        List<String> lines = Wrapped.of(words, metrics(Type.TITLE, TITLE), width);
        return lines.get(0);
    }

    private void text(Type like, double size, Color colour, String words, int x, int base, boolean toTheRight) {
        g.setFont(font(like, size));
        g.setColor(colour);
        g.drawString(words, toTheRight ? x - g.getFontMetrics().stringWidth(words) : x, base);
    }
}
