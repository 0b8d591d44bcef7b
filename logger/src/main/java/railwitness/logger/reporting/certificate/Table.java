package railwitness.logger.reporting.certificate;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;

/** Rows under a head that is said again on every page; a hairline below each row, no upright rules. */
public final class Table {
    private static final float GAP = 7;
    private static final float WORDS_AFTER_NUMBERS = 8;

    private final Typesetter type;
    private final List<Column> columns;
    private final float size;
    private final float padding;
    private final float[] edges;
    private PDStructureElement part;

    /** @param padding above and below the text of a row, pt */
    public Table(Typesetter type, float size, float padding, List<Column> columns) {
        this.type = type;
        this.columns = List.copyOf(columns);
        this.size = size;
        this.padding = padding;
        this.edges = edges();
    }

    private float[] edges() {
        float shares = 0;
        for (Column column : columns) {
            shares += column.share();
        }
        float[] at = new float[columns.size() + 1];
        at[0] = type.left();
        for (int i = 0; i < columns.size(); i++) {
            at[i + 1] = at[i] + type.width() * columns.get(i).share() / shares;
        }
        return at;
    }

    /** Sets the head here. */
    public void head() {
        List<Paragraph> cells = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            cells.add(cell(i, Span.muted(columns.get(i).head())));
        }
        set(cells, List.of(), "TH");
        type.rule(type.left(), type.right(), type.y(), 0.7f, Tone.STRONG_RULE);
    }

    /** Left edge of a column, counted from zero, pt; of one behind the last: the right edge of all. */
    float edge(int column) {
        return edges[column];
    }

    /** Height of a row's text alone, pt. */
    float textHeight(List<Span> spans) {
        List<Paragraph> cells = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            cells.add(cell(i, spans.get(i)));
        }
        return highest(cells);
    }

    /** Height a row of one line takes, pt. */
    float rowHeight() {
        return size * 1.36f + 2 * padding;
    }

    public void row(List<String> texts) {
        row(texts, "", Tone.INK);
    }

    /**
     * @param below a line of small print under the first column, over the whole width; empty for none
     * @param last colour of the last column
     */
    void row(List<String> texts, String below, Color last) {
        List<Span> spans = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            boolean plain = i < columns.size() - 1 || last.equals(Tone.INK);
            spans.add(plain ? Span.plain(texts.get(i)) : new Span(texts.get(i), Face.MEDIUM, last));
        }
        spans(spans, below);
    }

    /** As {@link #row(List, String, Color)}, each cell in its own face and colour. */
    public void spans(List<Span> spans, String below) {
        List<Paragraph> cells = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            cells.add(cell(i, spans.get(i)));
        }
        List<Paragraph> under = below.isEmpty()
                ? List.of()
                : List.of(Paragraph.of(type.faces(), size - 1.4f, type.width(), List.of(Span.muted(below))));
        if (type.room() < height(cells, under)) {
            type.newPage();
            head();
        }
        set(cells, under, "TD");
        type.rule(type.left(), type.right(), type.y(), 0.5f, Tone.RULE);
    }

    private Paragraph cell(int column, Span text) {
        float width = edges[column + 1] - edges[column] - indent(column) - (column == columns.size() - 1 ? 0 : GAP);
        Paragraph whole = Paragraph.of(type.faces(), size, width, List.of(text));
        return whole.atMost((int) Math.max(1, (type.paper().height() / 3) / whole.leading()));
    }

    private float indent(int column) {
        return column > 0
                        && columns.get(column - 1).right()
                        && !columns.get(column).right()
                ? WORDS_AFTER_NUMBERS
                : 0;
    }

    private float height(List<Paragraph> cells, List<Paragraph> under) {
        float most = highest(cells);
        for (Paragraph line : under) {
            most += line.height();
        }
        return most + 2 * padding;
    }

    private float highest(List<Paragraph> cells) {
        float most = size * 1.36f;
        for (Paragraph cell : cells) {
            most = Math.max(most, cell.height());
        }
        return most;
    }

    private void set(List<Paragraph> cells, List<Paragraph> under, String role) {
        float top = type.y() + padding;
        part = part == null ? type.open("Table") : part;
        type.in(
                part,
                () -> type.part("TR", () -> {
                    for (int i = 0; i < cells.size(); i++) {
                        int column = i;
                        type.part(role, () -> place(column, cells.get(column), top));
                    }
                    float below = top + highest(cells);
                    for (Paragraph line : under) {
                        float at = below;
                        type.part(role, () -> line.at(type, type.left(), at));
                        below += line.height();
                    }
                }));
        type.down(height(cells, under));
    }

    private void place(int column, Paragraph cell, float top) {
        if (columns.get(column).right()) {
            cell.rightAt(type, edges[column + 1] - (column == columns.size() - 1 ? 0 : GAP), top);
        } else {
            cell.at(type, edges[column] + indent(column), top);
        }
    }
}
