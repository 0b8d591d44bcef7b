package railwitness.logger.ui.screen.sessions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;
import railwitness.logger.reporting.comparing.Answer;
import railwitness.logger.reporting.comparing.Change;
import railwitness.logger.reporting.comparing.Compared;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.reporting.comparing.SisterChart;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.FigureWords;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * A comparison as rows of a sheet: what really changed first, the largest change for its uncertainty on top.
 *
 * @param rows as they are written
 * @param figures beside each row what it is about, in the unit shown; empty for a caption
 */
record ComparisonRows(List<Column> columns, List<Row> rows, List<Optional<Compared>> figures) {
    private static final int DIGITS = 5;
    private static final String NONE = "\u2013";

    /** Where a figure stands; the constants in the order of the sheet. */
    private enum Group {
        REAL,
        NOT_SHOWN,
        NOT_KNOWN
    }

    private record Line(Group group, double weight, Row row, Compared figure) {}

    /** Slow: works out every change. */
    static ComparisonRows of(Comparison comparison) {
        boolean sisters = !comparison.charts().isEmpty();
        List<Line> lines = comparison.figures().stream()
                .map(ComparisonRows::shown)
                .map(figure -> sisters ? sister(comparison, figure) : changed(figure))
                .sorted(Comparator.comparing(Line::group)
                        .thenComparing(Comparator.comparingDouble(Line::weight).reversed()))
                .toList();
        List<Row> rows = new ArrayList<>();
        List<Optional<Compared>> figures = new ArrayList<>();
        Optional<Group> group = Optional.empty();
        for (Line line : lines) {
            if (!group.equals(Optional.of(line.group()))) {
                group = Optional.of(line.group());
                rows.add(Row.group(Words.of((sisters ? "comparison.sisters." : "comparison.")
                        + line.group().name())));
                figures.add(Optional.empty());
            }
            rows.add(line.row());
            figures.add(Optional.of(line.figure()));
        }
        return new ComparisonRows(columns(comparison, sisters), List.copyOf(rows), List.copyOf(figures));
    }

    private static Compared shown(Compared figure) {
        FigureWords words = FigureWords.of(FigureName.of(figure.name()));
        return figure.scaled(words.scale(), words.unit());
    }

    private static List<Column> columns(Comparison comparison, boolean sisters) {
        List<Column> columns = new ArrayList<>(List.of(Column.words(Words.of("findings.figure"))));
        if (sisters) {
            columns.add(Column.numbers(Words.of("comparison.mean")));
            columns.add(Column.numbers(Words.of("comparison.lowest")));
            columns.add(Column.numbers(Words.of("comparison.highest")));
            columns.add(Column.words(Words.of("comparison.unlike")));
            return columns;
        }
        int sessions = comparison.sessions().size();
        IntStream.range(0, sessions).forEach(i -> columns.add(Column.numbers(Comparison.letter(i))));
        if (sessions == 2) {
            columns.add(Column.numbers(Words.of("comparison.change")));
            columns.add(Column.numbers(Words.of("comparison.U")));
        }
        return columns;
    }

    private static Cell name(Compared figure, boolean strong) {
        String name = FigureWords.name(figure.name(), figure.rail());
        return Cell.of(name + (figure.unit().isEmpty() ? "" : ", " + figure.unit()), strong ? Ink.LIVE : Ink.INK);
    }

    private static Line changed(Compared figure) {
        List<Optional<Change>> changes = figure.changes();
        List<Change> known = changes.stream().flatMap(Optional::stream).toList();
        boolean real = known.stream().anyMatch(change -> change.answer() == Answer.REAL);
        boolean judged = known.stream().anyMatch(change -> change.answer() != Answer.NOT_KNOWN);
        List<Cell> cells = new ArrayList<>(List.of(name(figure, real)));
        int places = figure.places();
        for (int i = 0; i < changes.size(); i++) {
            boolean strong = changes.get(i)
                    .filter(change -> change.answer() == Answer.REAL)
                    .isPresent();
            cells.add(Cell.of(value(figure.values().get(i), places), strong ? Ink.LIVE : i == 0 ? Ink.MUTED : Ink.INK));
        }
        if (changes.size() == 2) {
            cells.add(Cell.of(changes.get(1).map(ComparisonRows::difference).orElse(""), real ? Ink.LIVE : Ink.MUTED));
            cells.add(Cell.of(changes.get(1).map(ComparisonRows::expanded).orElse(""), Ink.MUTED));
        }
        Group group = real ? Group.REAL : judged ? Group.NOT_SHOWN : Group.NOT_KNOWN;
        double weight = known.stream().mapToDouble(ComparisonRows::weight).max().orElse(0);
        return new Line(group, weight, Row.of(cells), figure);
    }

    /** How often a change holds its own uncertainty. */
    private static double weight(Change change) {
        return change.answer() == Answer.NOT_KNOWN || change.coverage().expanded() == 0
                ? 0
                : Math.abs(change.difference().value()) / change.coverage().expanded();
    }

    private static Line sister(Comparison comparison, Compared figure) {
        Optional<SisterChart> chart = comparison.chart(figure);
        List<Estimate> values =
                figure.values().stream().flatMap(Optional::stream).toList();
        boolean unlike = chart.filter(one -> !one.unlike().isEmpty()).isPresent();
        int places = figure.places();
        List<Cell> cells = List.of(
                name(figure, unlike),
                Cell.ink(chart.map(one -> Numbers.fixed(one.chart().centre(), places))
                        .orElse(NONE)),
                Cell.of(edge(values.stream().min(Comparator.comparingDouble(Estimate::value)), places), Ink.MUTED),
                Cell.of(edge(values.stream().max(Comparator.comparingDouble(Estimate::value)), places), Ink.MUTED),
                Cell.of(chart.map(ComparisonRows::letters).orElse(""), Ink.FAULT));
        Group group = unlike ? Group.REAL : chart.isPresent() ? Group.NOT_SHOWN : Group.NOT_KNOWN;
        return new Line(group, unlike ? chart.get().furthest().distance() : 0, Row.of(cells), figure);
    }

    private static String edge(Optional<Estimate> value, int places) {
        return value(value, places);
    }

    private static String letters(SisterChart chart) {
        return String.join(
                " ", chart.unlike().stream().sorted().map(Comparison::letter).toList());
    }

    private static String value(Optional<Estimate> value, int places) {
        return value.map(known -> known.known() && known.u() > 0
                        ? Numbers.fixed(known.value(), Math.max(0, places))
                        : Numbers.significant(known.value(), DIGITS))
                .orElse(NONE);
    }

    private static String difference(Change change) {
        return change.answer() == Answer.NOT_KNOWN
                ? Numbers.significant(change.difference().value(), DIGITS)
                : signed(Numbers.of(rounding(change).value()));
    }

    private static String signed(String number) {
        return number.startsWith("\u2212") || number.chars().noneMatch(c -> c >= '1' && c <= '9')
                ? number
                : "+" + number;
    }

    private static String expanded(Change change) {
        return change.answer() == Answer.NOT_KNOWN
                ? Words.of("findings.U.unknown")
                : "\u00b1 " + Numbers.of(rounding(change).uncertainty());
    }

    private static Rounding rounding(Change change) {
        return Rounding.of(change.difference().value(), change.coverage().expanded());
    }
}
