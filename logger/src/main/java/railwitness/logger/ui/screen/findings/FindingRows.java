package railwitness.logger.ui.screen.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.verdict.Limit;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.findings.FigureRow;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.FigureWords;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * The findings as rows of a sheet.
 *
 * @param rows as they are written
 * @param findings beside each row what it is about; empty for a caption
 */
record FindingRows(List<Row> rows, List<Optional<FigureRow>> findings) {
    static List<Column> columns() {
        return List.of(
                Column.words(Words.of("findings.figure")),
                Column.numbers(Words.of("findings.value")),
                Column.numbers(Words.of("findings.U")).givingWay(3),
                Column.numbers(Words.of("findings.expected"), Words.of("findings.expected.own"))
                        .givingWay(4),
                Column.numbers(Words.of("findings.difference")).givingWay(2),
                Column.numbers(Words.of("findings.limit")).givingWay(1),
                Column.drawing(150, Words.of("findings.strip"), Words.of("findings.strip.scale"))
                        .givingWay(5),
                Column.words(Words.of("findings.verdict")));
    }

    static FindingRows of(List<FigureRow> all) {
        List<Row> rows = new ArrayList<>();
        List<Optional<FigureRow>> about = new ArrayList<>();
        boolean judged = false;
        boolean others = false;
        for (FigureRow finding : gravestFirst(all)) {
            boolean asked = finding.verdict().isPresent();
            if (asked && !judged || !asked && !others) {
                rows.add(Row.group(Words.of(asked ? "findings.judged" : "findings.others")));
                about.add(Optional.empty());
                judged = judged || asked;
                others = others || !asked;
            }
            rows.add(row(finding));
            about.add(Optional.of(finding));
        }
        return new FindingRows(List.copyOf(rows), List.copyOf(about));
    }

    private static Row row(FigureRow finding) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.ink(FigureWords.of(finding.name()).titled(finding.name().word(), finding.rail())));
        cells.add(Cell.ink(value(finding)));
        cells.add(Cell.of(uncertainty(finding), Ink.MUTED));
        cells.add(Cell.of(expected(finding), Ink.PENCIL));
        cells.add(Cell.of(difference(finding), finding.differs() ? Ink.FAULT : Ink.MUTED));
        cells.add(Cell.of(
                finding.verdict()
                        .map(v -> limit(finding, v.requirement().limit()))
                        .orElse(""),
                Ink.MUTED));
        cells.add(strip(finding));
        cells.add(finding.verdict().map(FindingRows::verdict).orElse(Cell.EMPTY));
        boolean unjudged = finding.verdict()
                .filter(verdict -> verdict.outcome() == Outcome.NOT_JUDGED)
                .isPresent();
        return Row.of(cells)
                .remarked(
                        unjudged
                                ? Words.of(
                                        "findings.because",
                                        ChannelNames.inText(
                                                finding.verdict().get().reason()))
                                : "");
    }

    /** What failed stands first, so that it is seen without scrolling; else the order stays. */
    private static List<FigureRow> gravestFirst(List<FigureRow> all) {
        return all.stream()
                .sorted(Comparator.comparingInt(row -> row.verdict()
                        .map(verdict -> verdict.outcome().unfit() ? 0 : 1)
                        .orElse(2)))
                .toList();
    }

    static String value(FigureRow finding) {
        return finding.valueDigits().map(Numbers::of).orElse("\u2013");
    }

    static String uncertainty(FigureRow finding) {
        return finding.expandedDigits()
                .map(digits -> "\u00b1 " + Numbers.of(digits))
                .orElse(finding.value().isPresent() ? Words.of("findings.U.unknown") : "");
    }

    private static String expected(FigureRow finding) {
        return finding.expectedDigits()
                .map(digits -> Numbers.of(digits.value()) + " \u00b1 " + Numbers.of(digits.uncertainty()))
                .orElse("");
    }

    private static String difference(FigureRow finding) {
        return finding.difference()
                .map(digits -> (digits.signum() > 0 ? "+" : "") + Numbers.of(digits))
                .map(number ->
                        finding.differs() ? Words.of("findings.difference." + finding.differsText(), number) : number)
                .orElse("");
    }

    private static String limit(FigureRow finding, Limit limit) {
        double scale = FigureWords.of(finding.name()).scale();
        if (limit.least().isPresent() && limit.most().isPresent()) {
            return Words.of("findings.between", scaled(limit.least(), scale), scaled(limit.most(), scale));
        }
        return limit.most().isPresent()
                ? "\u2264 " + scaled(limit.most(), scale)
                : "\u2265 " + scaled(limit.least(), scale);
    }

    private static String scaled(OptionalDouble value, double scale) {
        return Numbers.plain(
                Double.parseDouble(String.format(java.util.Locale.ROOT, "%.6g", value.getAsDouble() * scale)));
    }

    private static Cell strip(FigureRow finding) {
        if (finding.verdict().isEmpty() || finding.value().isEmpty()) {
            return Cell.EMPTY;
        }
        LimitStrip strip = LimitStrip.of(finding, finding.verdict().get());
        return Cell.drawn(strip.words(), strip);
    }

    private static Cell verdict(Verdict verdict) {
        Outcome outcome = verdict.outcome();
        return Cell.of(Words.of("verdict." + outcome.name()), outcome.unfit() ? Ink.FAULT : Ink.INK);
    }
}
