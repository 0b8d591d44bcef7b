package railwitness.logger.reporting.certificate;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.findings.Findings;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.findings.SessionFindings;

/** Figures as rows of the certificate's tables. */
final class FigureList {
    static final List<Column> COLUMNS = List.of(
            Column.words("figure", 36),
            Column.numbers("value", 15),
            Column.numbers("U (95 %)", 15),
            Column.numbers("k", 8),
            Column.numbers("limit", 17),
            Column.words("verdict", 19));

    private FigureList() {}

    /** One row for every requirement, in the sheet's order. */
    static List<Printed> judged(SessionFindings session) {
        List<Printed> rows = new ArrayList<>();
        Findings findings = session.findings();
        for (Verdict verdict : findings.verdicts()) {
            Optional<Figure> figure = findings.figure(
                    FigureName.of(verdict.requirement().figure()),
                    verdict.requirement().rail());
            rows.add(figure.map(found -> Printed.of(found, Optional.of(verdict)))
                    .orElseGet(() -> Printed.missing(verdict)));
        }
        return rows;
    }

    /** Every figure that was found, with its verdicts; one asked twice stands there twice. */
    static List<Printed> all(SessionFindings session) {
        List<Printed> rows = new ArrayList<>();
        for (Figure figure : session.findings().figures()) {
            List<Verdict> verdicts = session.findings().verdicts().stream()
                    .filter(verdict ->
                            verdict.requirement().figure().equals(figure.name().word())
                                    && verdict.requirement().rail().equals(figure.rail()))
                    .toList();
            if (verdicts.isEmpty()) {
                rows.add(Printed.of(figure, Optional.empty()));
            }
            verdicts.forEach(verdict -> rows.add(Printed.of(figure, Optional.of(verdict))));
        }
        return rows;
    }

    static List<String> cells(Printed row) {
        return List.of(row.name(), row.value(), row.expanded(), row.k(), row.limit(), row.verdict());
    }

    /** The cells, the name cut to one line. */
    static List<String> oneLine(Printed row, Typesetter type) {
        List<String> cells = new ArrayList<>(cells(row));
        cells.set(0, type.faces().clipped(type.faces().clean(row.name()), Face.REGULAR, 9, type.width() * 0.31f));
        return cells;
    }

    /** Red for what keeps the unit from being fit; the word says it too. */
    static Color colour(Printed row) {
        return row.outcome().filter(Outcome::unfit).isPresent() ? Tone.FAULT : Tone.INK;
    }
}
