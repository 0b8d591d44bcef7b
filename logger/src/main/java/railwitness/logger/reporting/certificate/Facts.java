package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.List;

/** Short facts in two columns, each behind its muted name. */
final class Facts {
    private static final float NAME = 58;
    private static final float GAP = 16;
    private static final float LEFT_SHARE = 0.57f;
    private static final int MOST_LINES = 3;

    private final Typesetter type;
    private final float size;
    private final List<String[]> rows = new ArrayList<>();

    Facts(Typesetter type, float size) {
        this.type = type;
        this.size = size;
    }

    void add(String leftName, String left, String rightName, String right) {
        rows.add(new String[] {leftName, left, rightName, right});
    }

    /** Sets them from here downwards. */
    void set() {
        float leftWidth = type.width() * LEFT_SHARE;
        float rightX = type.left() + leftWidth;
        for (String[] row : rows) {
            float one = pair(row[0], row[1], type.left(), leftWidth - GAP);
            float other = pair(row[2], row[3], rightX, type.right() - rightX);
            type.down(Math.max(one, other) + 1);
        }
    }

    private float pair(String name, String value, float x, float width) {
        Paragraph text = Paragraph.of(type.faces(), size, width - NAME, value).atMost(MOST_LINES);
        Paragraph.of(type.faces(), size, NAME, List.of(Span.muted(name))).at(type, x, type.y());
        text.at(type, x + NAME, type.y());
        return Math.max(text.height(), size * 1.36f);
    }
}
