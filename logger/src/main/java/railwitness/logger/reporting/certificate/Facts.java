package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.List;

/** Short facts in two columns, each behind its muted name. */
final class Facts {
    private static final float NAME = 62;
    private static final float GAP = 16;
    private static final float BETWEEN = 1.2f;
    private static final String INSIDE = "\u2026 whole inside";

    private final Typesetter type;
    private final float size;

    Facts(Typesetter type, float size) {
        this.type = type;
        this.size = size;
    }

    /** Sets both columns from here downwards. */
    void set(String leftTitle, List<Fact> left, String rightTitle, List<Fact> right) {
        float top = type.y();
        float rightX = type.left() + type.width() / 2 + GAP / 2;
        float one = column(leftTitle, left, type.left(), rightX - GAP, top);
        float other = column(rightTitle, right, rightX, type.right(), top);
        type.moveTo(Math.max(one, other));
    }

    /** How high they will be, pt. */
    float height(List<Fact> left, List<Fact> right) {
        float width = type.width() / 2 - GAP / 2;
        return 15 + Math.max(height(left, width), height(right, width));
    }

    private float height(List<Fact> facts, float width) {
        float height = 0;
        for (Fact fact : facts) {
            height += cut(fact, width - NAME).height() + BETWEEN;
        }
        return height;
    }

    private float column(String title, List<Fact> facts, float x, float end, float top) {
        type.part("H3", () -> type.text(title, Face.MEDIUM, size, Tone.INK, x, top + size));
        type.rule(x, end, top + size + 4, 0.6f, Tone.STRONG_RULE);
        float[] y = {top + size + 8};
        for (Fact fact : facts) {
            type.part("P", () -> {
                type.text(fact.name(), Face.REGULAR, size, Tone.MUTED, x, y[0] + size);
                Paragraph value = cut(fact, end - x - NAME);
                value.at(type, x + NAME, y[0]);
                y[0] += value.height() + BETWEEN;
            });
        }
        return y[0];
    }

    private Paragraph cut(Fact fact, float width) {
        return Paragraph.of(type.faces(), size, width, Typography.of(fact.value()))
                .atMost(fact.mostLines(), INSIDE);
    }

    /** Those that do not stand whole on the first page. */
    List<Fact> cut(List<Fact> facts) {
        List<Fact> cut = new ArrayList<>();
        float width = type.width() / 2 - GAP / 2 - NAME;
        for (Fact fact : facts) {
            if (Paragraph.of(type.faces(), size, width, Typography.of(fact.value()))
                            .count()
                    > fact.mostLines()) {
                cut.add(fact);
            }
        }
        return cut;
    }
}
