package railwitness.logger.reporting.certificate;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Locale;
import java.util.OptionalDouble;
import railwitness.analysis.verdict.DecisionRule;
import railwitness.analysis.verdict.LimitShare;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.findings.FigureRow;

/**
 * The common strip in print, from 0 to 150 % of the limit: what is not allowed hatched, what lies within U of the limit
 * dotted, the figure a dot with its U, as found a pale ring. No colour says anything.
 */
final class LimitStripPrint {
    static final double END = 1.5;
    private static final double LAST = 1.47;
    private static final float TALL = 4.2f;
    private static final float DOT = 2.6f;
    private static final float RING = 4.3f;
    private static final Color PALE = new Color(0x7A828A);

    private final Typesetter type;
    private final float from;
    private final float width;

    /** @param from left end, pt */
    LimitStripPrint(Typesetter type, float from, float width) {
        this.type = type;
        this.from = from;
        this.width = width;
    }

    /** The axis, above the strips. */
    void head(float baseline) {
        type.text("share of the limit", Face.REGULAR, 7.5f, Tone.MUTED, from, baseline - 10);
        for (int percent : new int[] {0, 50, 100}) {
            String text = percent + (percent == 100 ? " %" : "");
            float x = x(percent / 100.0);
            float half = percent == 0 ? 0 : type.faces().width(String.valueOf(percent), Face.REGULAR, 7.5f) / 2;
            type.text(text, Face.REGULAR, 7.5f, Tone.MUTED, x - half, baseline);
        }
    }

    /** @param earlier the figure as found, SI */
    void row(FigureRow row, OptionalDouble earlier, float middle) {
        Verdict verdict = row.verdict().orElseThrow();
        LimitShare share =
                new LimitShare(verdict.requirement().limit(), row.name().unit().equals("1") && isRatio(row));
        line(from, middle, x(1), middle, 0.5f, Tone.STRONG_RULE);
        for (double tick : new double[] {0, 0.5}) {
            line(x(tick), middle - 2, x(tick), middle + 2, 0.5f, Tone.STRONG_RULE);
        }
        hatch(new Rectangle2D.Float(x(1), middle - TALL, x(END) - x(1), 2 * TALL));
        row.figure().ifPresent(figure -> {
            double value = figure.value().value();
            double expanded = row.coverage().isPresent()
                    ? row.coverage().get().expanded() / row.unit().factor()
                    : 0;
            if (verdict.rule() == DecisionRule.GUARD_BAND && expanded > 0) {
                dots(share, value, verdict.requirement().limit().guardBand(figure.value()), middle);
            }
            earlier.ifPresent(before -> ring(share.of(before), middle));
            whiskers(share, value, expanded, middle);
            dot(share.of(value), middle);
        });
        line(x(1), middle - TALL - 1.2f, x(1), middle + TALL + 1.2f, 1.1f, Tone.INK);
    }

    private static boolean isRatio(FigureRow row) {
        return row.name().word().contains("efficiency");
    }

    private float x(double share) {
        return from + width * (float) (Math.min(share, END) / END);
    }

    private void line(float x1, float y1, float x2, float y2, float thickness, Color colour) {
        type.stroke(new Line2D.Float(x1, y1, x2, y2), thickness, colour);
    }

    private void hatch(Rectangle2D.Float place) {
        Path2D.Float lines = new Path2D.Float();
        for (float x = place.x - place.height; x < place.x + place.width; x += 4) {
            float left = Math.max(x, place.x);
            float right = Math.min(x + place.height, place.x + place.width);
            if (right > left) {
                lines.moveTo(left, place.y + place.height - (left - x));
                lines.lineTo(right, place.y + place.height - (right - x));
            }
        }
        type.stroke(lines, 0.4f, Tone.STRONG_RULE);
    }

    /** The stretch before the limit that U takes up: one U inside it, as long as at the figure. */
    private void dots(LimitShare share, double value, double expanded, float middle) {
        double wide = Math.max(
                Math.abs(share.of(value + expanded) - share.of(value)),
                Math.abs(share.of(value - expanded) - share.of(value)));
        Area dots = new Area();
        for (float x = x(Math.max(0, 1 - wide)) + 1; x < x(1) - 0.5f; x += 2.4f) {
            for (float y = middle - TALL + 1; y < middle + TALL; y += 2.4f) {
                dots.add(new Area(new Rectangle2D.Float(x, y, 0.7f, 0.7f)));
            }
        }
        if (!dots.isEmpty()) {
            type.fill(dots, Tone.MUTED);
        }
    }

    private void whiskers(LimitShare share, double value, double expanded, float middle) {
        double one = share.of(value - expanded);
        double other = share.of(value + expanded);
        float left = x(Math.min(one, other));
        float right = x(Math.max(one, other));
        if (right - left < 2 * DOT + 1 || share.of(value) > LAST) {
            return;
        }
        line(left, middle, right, middle, 1.1f, Tone.INK);
        line(left, middle - 2.4f, left, middle + 2.4f, 1.1f, Tone.INK);
        line(right, middle - 2.4f, right, middle + 2.4f, 1.1f, Tone.INK);
    }

    private void ring(double share, float middle) {
        if (share > LAST) {
            beyond(share, middle, PALE, false);
        } else {
            type.stroke(round(x(share), middle, RING), 1, PALE);
        }
    }

    private void dot(double share, float middle) {
        if (share > LAST) {
            beyond(share, middle, Tone.INK, true);
        } else {
            type.fill(round(x(share), middle, DOT), Tone.INK);
        }
    }

    private static Shape round(float x, float y, float radius) {
        return new Ellipse2D.Float(x - radius, y - radius, 2 * radius, 2 * radius);
    }

    private void beyond(double share, float middle, Color colour, boolean filled) {
        float tip = x(END);
        Path2D.Float head = new Path2D.Float();
        head.moveTo(tip - 5, middle - 3);
        head.lineTo(tip, middle);
        head.lineTo(tip - 5, middle + 3);
        head.closePath();
        if (filled) {
            type.fill(head, colour);
        } else {
            type.stroke(head, 0.9f, colour);
        }
        String text = share >= 9.99 ? "> 999 %" : String.format(Locale.ROOT, "%.0f %%", 100 * share);
        float wide = type.faces().width(text, Face.REGULAR, 7.5f);
        float right = filled ? tip - 7 : tip - 7;
        type.fill(new Rectangle2D.Float(right - wide - 1, middle - 4, wide + 2, 8), Color.WHITE);
        type.textRight(text, Face.REGULAR, 7.5f, colour.equals(PALE) ? Tone.MUTED : colour, right, middle + 2.7f);
    }

    /** What the signs mean, below the strips. */
    void legend(float x, float baseline, boolean withEarlier) {
        float middle = baseline - 2.7f;
        line(x, middle, x + 16, middle, 1.1f, Tone.INK);
        line(x, middle - 2.4f, x, middle + 2.4f, 1.1f, Tone.INK);
        line(x + 16, middle - 2.4f, x + 16, middle + 2.4f, 1.1f, Tone.INK);
        type.fill(round(x + 8, middle, DOT), Tone.INK);
        float at = words(withEarlier ? "as left, with U" : "measured, with U", x + 21, baseline);
        if (withEarlier) {
            type.stroke(round(at + 5, middle, RING), 1, PALE);
            at = words("as found", at + 13, baseline);
        }
        Area dots = new Area();
        for (float dx = 0; dx < 14; dx += 2.4f) {
            for (float dy = -3; dy < 4; dy += 2.4f) {
                dots.add(new Area(new Rectangle2D.Float(at + dx, middle + dy, 0.7f, 0.7f)));
            }
        }
        type.fill(dots, Tone.MUTED);
        at = words("within U of the limit", at + 18, baseline);
        hatch(new Rectangle2D.Float(at, middle - TALL, 16, 2 * TALL));
        words("not allowed", at + 20, baseline);
    }

    private float words(String text, float x, float baseline) {
        type.text(text, Face.REGULAR, 7.5f, Tone.MUTED, x, baseline);
        return x + type.faces().width(text, Face.REGULAR, 7.5f) + 14;
    }
}
