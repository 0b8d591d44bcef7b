package railwitness.logger.reporting.certificate;

import java.util.List;
import railwitness.logger.reporting.findings.FigureRow;

/** Figures as rows of the certificate's tables. */
final class FigureList {
    static final List<Column> COLUMNS = List.of(
            Column.words("figure", 143),
            Column.numbers("measured", 63),
            Column.numbers("U (95 %)", 43),
            Column.numbers("expected", 61),
            Column.numbers("difference", 53),
            Column.numbers("limit", 69),
            Column.words("verdict", 61));

    private FigureList() {}

    /** Red for a difference that means something and for what keeps the unit from being fit; the words say it too. */
    static List<Span> cells(FigureRow row) {
        return List.of(
                Span.plain(row.label()),
                Span.plain(row.value().isPresent() ? behind(row, Typography.of(row.valueText())) : row.valueText()),
                Span.muted(row.expandedText()),
                Span.muted(Typography.of(row.expectedText())),
                toned(Typography.difference(row), row.differs()),
                Span.plain(row.verdict().isPresent() ? behind(row, Typography.of(row.limitText())) : ""),
                toned(row.verdictText(), row.unfit()));
    }

    private static Span toned(String text, boolean fault) {
        return fault ? new Span(text, Face.MEDIUM, Tone.FAULT) : Span.plain(text);
    }

    /** What stands below a figure: its coverage factor, and where it holds. */
    static String below(FigureRow row) {
        return Typography.of((row.kText().isEmpty() ? "" : "k " + row.kText() + ", ") + row.at());
    }

    static String behind(FigureRow row, String number) {
        String symbol = row.unit().symbol();
        return symbol.isEmpty() ? number : number + " " + symbol;
    }
}
