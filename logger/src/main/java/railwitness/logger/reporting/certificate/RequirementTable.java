package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.verdict.Outcome;
import railwitness.logger.reporting.findings.FigureRow;

/** Every requirement with its limit strip, as found beside as left where there was a test before. */
final class RequirementTable {
    private static final float SIZE = 9;
    private static final float LEAST_PADDING = 1.2f;
    private static final float MOST_PADDING = 4.2f;
    private static final float HEAD = 34;
    private static final float LEGEND = 20;

    private final Evidence evidence;
    private final Typesetter type;
    private final boolean withEarlier;
    private final boolean judged;
    private final List<FigureRow> rows;

    RequirementTable(Evidence evidence, Typesetter type) {
        this.evidence = evidence;
        this.type = type;
        List<FigureRow> asked = FigureRow.judged(evidence.session().findings());
        this.judged = !asked.isEmpty();
        this.rows = judged ? asked : FigureRow.found(evidence.session().findings());
        this.withEarlier = judged && evidence.earlier().isPresent();
    }

    /** Sets as many rows as there is room for above what has to stand below; the worst first where not all fit. */
    void set(float keep) {
        if (rows.isEmpty()) {
            Paragraph.of(type.faces(), SIZE, type.width(), "No figure could be worked out: no step was measured.")
                    .flow(type, type.left());
            return;
        }
        float room = type.room() - keep - HEAD - (judged ? LEGEND : 0);
        Table measure = new Table(type, SIZE, LEAST_PADDING, columns());
        float text = 0;
        for (FigureRow row : rows) {
            text += measure.textHeight(cells(row));
        }
        boolean all = text + 2 * LEAST_PADDING * rows.size() <= room;
        int fit = (int) (rows.size() * room / (text + 2 * LEAST_PADDING * rows.size()));
        List<FigureRow> shown = all
                ? rows
                : rows.stream()
                        .sorted(Comparator.comparing(RequirementTable::badness))
                        .limit(Math.max(1, fit - 2))
                        .toList();
        float padding = Math.max(LEAST_PADDING, Math.min(MOST_PADDING, (room - text) / shown.size() / 2));
        Table table = new Table(type, SIZE, all ? padding : LEAST_PADDING, columns());
        if (judged) {
            judged(table, shown);
        } else {
            table.head();
            shown.forEach(row -> table.spans(cells(row), ""));
        }
        if (!all) {
            type.down(2);
            Paragraph.of(
                            type.faces(),
                            SIZE,
                            type.width(),
                            List.of(Span.muted(String.format(
                                    Locale.ROOT,
                                    "and %d more%s; all stand on the next pages",
                                    rows.size() - shown.size(),
                                    judged ? ", none worse than these" : ""))))
                    .flow(type, type.left());
        }
        if (judged) {
            type.down(13);
            type.part("P", () -> strip(table).legend(type.left() + 2, type.y(), withEarlier));
            type.down(5);
        }
    }

    private void judged(Table table, List<FigureRow> shown) {
        LimitStripPrint strip = strip(table);
        type.down(12);
        float top = type.y();
        table.head();
        type.part("P", () -> strip.head(top + SIZE * 1.36f - 2));
        shown.forEach(row -> row(table, strip, row));
    }

    private LimitStripPrint strip(Table table) {
        return new LimitStripPrint(type, table.edge(stripColumn()), stripWidth(table));
    }

    private int stripColumn() {
        return withEarlier ? 5 : 4;
    }

    private float stripWidth(Table table) {
        return table.edge(stripColumn() + 1) - table.edge(stripColumn()) - 10;
    }

    private List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.words(judged ? "requirement" : "figure", withEarlier ? 37 : 38));
        if (withEarlier) {
            columns.add(Column.numbers("as found", 15));
        }
        columns.add(Column.numbers(withEarlier ? "as left" : "measured", 20));
        columns.add(Column.numbers("U (95 %)", 14));
        if (judged) {
            columns.add(Column.numbers("limit", 20));
            columns.add(Column.words("", 29));
            columns.add(Column.words("verdict", withEarlier ? 19 : 20));
        } else {
            columns.add(Column.numbers("expected", 20));
        }
        return columns;
    }

    private Optional<EarlierFigures.Found> before(FigureRow row) {
        return evidence.earlier().flatMap(earlier -> earlier.figures().of(row));
    }

    private List<Span> cells(FigureRow row) {
        Optional<EarlierFigures.Found> before = before(row);
        List<Span> cells = new ArrayList<>();
        cells.add(Span.plain(row.label()));
        if (withEarlier) {
            cells.add(Span.muted(
                    Typography.of(before.map(EarlierFigures.Found::shown).orElse(""))));
        }
        cells.add(
                row.value().isPresent()
                        ? Span.strong(FigureList.behind(row, Typography.of(row.valueText())))
                        : Span.muted("not found"));
        cells.add(Span.muted(row.expandedText()));
        if (judged) {
            cells.add(Span.plain(FigureList.behind(row, Typography.of(row.limitText()))));
            cells.add(Span.plain(""));
            cells.add(verdict(row, before));
        } else {
            cells.add(Span.muted(Typography.of(row.expectedText())));
        }
        return cells;
    }

    private void row(Table table, LimitStripPrint strip, FigureRow row) {
        float top = type.y();
        table.spans(cells(row), "");
        Optional<EarlierFigures.Found> before = before(row);
        OptionalDouble found = before.isPresent() && withEarlier
                ? OptionalDouble.of(before.get().value())
                : OptionalDouble.empty();
        strip.row(row, found, (top + type.y()) / 2);
    }

    private static Span verdict(FigureRow row, Optional<EarlierFigures.Found> before) {
        String was = before.map(EarlierFigures.Found::verdict)
                .filter(verdict -> !verdict.isEmpty() && !verdict.equals(row.verdictText()))
                .map(verdict -> ", was " + verdict)
                .orElse("");
        return row.unfit()
                ? new Span(row.verdictText() + was, Face.MEDIUM, Tone.FAULT)
                : Span.plain(row.verdictText() + was);
    }

    private static int badness(FigureRow row) {
        return -row.outcome().map(Outcome::ordinal).orElse(-1);
    }
}
