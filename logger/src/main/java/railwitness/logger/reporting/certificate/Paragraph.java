package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.List;

/** Spans of text broken into lines of one width; a word wider than a line is broken too. */
public final class Paragraph {
    private static final float LEADING = 1.36f;

    private final Faces faces;
    private final float size;
    private final float width;
    private final List<List<Span>> lines = new ArrayList<>();
    private List<Span> line = new ArrayList<>();
    private float used;

    private Paragraph(Faces faces, float size, float width) {
        this.faces = faces;
        this.size = size;
        this.width = width;
    }

    public static Paragraph of(Faces faces, float size, float width, List<Span> spans) {
        Paragraph paragraph = new Paragraph(faces, size, width);
        for (Span span : spans) {
            for (String word : LineBreaks.of(faces.clean(span.text()))) {
                paragraph.word(new Span(word, span.face(), span.colour()), width);
            }
        }
        paragraph.breakLine();
        return paragraph;
    }

    public static Paragraph of(Faces faces, float size, float width, String text) {
        return of(faces, size, width, List.of(Span.plain(text)));
    }

    private void word(Span word, float width) {
        String bare = word.text().stripTrailing();
        if (used + faces.width(bare, word.face(), size) > width && used > 0) {
            breakLine();
        }
        String rest = word.text();
        while (faces.width(rest.stripTrailing(), word.face(), size) > width) {
            int fits = fitting(rest, word.face(), width);
            put(new Span(rest.substring(0, fits), word.face(), word.colour()));
            breakLine();
            rest = rest.substring(fits);
        }
        put(new Span(rest, word.face(), word.colour()));
    }

    private int fitting(String text, Face face, float width) {
        int fits = 0;
        float sum = 0;
        while (fits < text.length()) {
            int next = fits + Character.charCount(text.codePointAt(fits));
            sum += faces.width(text.substring(fits, next), face, size);
            if (sum > width && fits > 0) {
                return fits;
            }
            fits = next;
        }
        return fits;
    }

    private void put(Span span) {
        if (!span.text().isEmpty()) {
            line.add(span);
            used += faces.width(span.text(), span.face(), size);
        }
    }

    private void breakLine() {
        if (!line.isEmpty()) {
            lines.add(line);
        }
        line = new ArrayList<>();
        used = 0;
    }

    int count() {
        return lines.size();
    }

    float leading() {
        return size * LEADING;
    }

    public float height() {
        return lines.size() * leading();
    }

    /** Only the first lines, the last of them ending in an ellipsis where some are left out. */
    public Paragraph atMost(int most) {
        return atMost(most, "\u2026");
    }

    /** The same with another ending. */
    Paragraph atMost(int most, String ending) {
        if (lines.size() <= most) {
            return this;
        }
        Paragraph cut = new Paragraph(faces, size, width);
        cut.lines.addAll(lines.subList(0, most));
        List<Span> last = new ArrayList<>(cut.lines.get(most - 1));
        Span end = last.remove(last.size() - 1);
        float before = width(last);
        while (!last.isEmpty() && before + faces.width(ending, end.face(), size) > width) {
            end = last.remove(last.size() - 1);
            before = width(last);
        }
        StringBuilder text = new StringBuilder(end.text().stripTrailing());
        float room = width - before;
        while (!text.isEmpty() && faces.width(text + ending, end.face(), size) > room) {
            text.setLength(text.offsetByCodePoints(text.length(), -1));
        }
        last.add(new Span(text + ending, end.face(), end.colour()));
        cut.lines.set(most - 1, last);
        return cut;
    }

    private float width(List<Span> spans) {
        float sum = 0;
        for (Span span : spans) {
            sum += faces.width(span.text(), span.face(), size);
        }
        return sum;
    }

    /** Sets it at a place without breaking pages. */
    public void at(Typesetter type, float x, float top) {
        type.part("P", () -> {
            float baseline = top + size;
            for (List<Span> one : lines) {
                set(type, one, x, baseline);
                baseline += leading();
            }
        });
    }

    public void rightAt(Typesetter type, float x, float top) {
        float baseline = top + size;
        for (List<Span> one : lines) {
            float width = 0;
            for (Span span : one) {
                width += faces.width(span.text(), span.face(), size);
            }
            Span last = one.get(one.size() - 1);
            width -= faces.width(last.text(), last.face(), size)
                    - faces.width(last.text().stripTrailing(), last.face(), size);
            float from = x - width;
            float at = baseline;
            type.part("P", () -> set(type, one, from, at));
            baseline += leading();
        }
    }

    /** Sets it at the left margin and goes on below, over as many pages as it takes. */
    public void flow(Typesetter type, float x) {
        type.part("P", () -> {
            for (int i = 0; i < lines.size(); i++) {
                type.need(leading() * (together(i) ? 2 : 1));
                set(type, lines.get(i), x, type.y() + size);
                type.down(leading());
            }
        });
    }

    /** Neither the first line nor the last stands alone on a page. */
    private boolean together(int line) {
        return lines.size() > 1 && (line == 0 || line == lines.size() - 2);
    }

    private void set(Typesetter type, List<Span> one, float x, float baseline) {
        float at = x;
        StringBuilder same = new StringBuilder();
        for (int i = 0; i < one.size(); i++) {
            Span span = one.get(i);
            same.append(span.text());
            boolean goesOn = i + 1 < one.size()
                    && one.get(i + 1).face() == span.face()
                    && one.get(i + 1).colour().equals(span.colour());
            if (!goesOn) {
                String text = same.toString();
                type.text(
                        i + 1 == one.size() ? text.stripTrailing() : text,
                        span.face(),
                        size,
                        span.colour(),
                        at,
                        baseline);
                at += faces.width(text, span.face(), size);
                same.setLength(0);
            }
        }
    }
}
