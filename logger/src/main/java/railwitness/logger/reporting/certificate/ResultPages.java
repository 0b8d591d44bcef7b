package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.expected.Expected;
import railwitness.analysis.findings.Findings;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.SessionCharts;
import railwitness.logger.reporting.findings.FigureRow;

/** All results: figures, what could not be found, operating points, pictures. */
final class ResultPages {
    private static final int RAILS_IN_A_TABLE = 1;
    private static final float PICTURE_HEIGHT = 150;
    private static final float FIGURES = 8.5f;

    private final Evidence evidence;
    private final Typesetter type;
    private final Section section;

    ResultPages(Evidence evidence, Typesetter type) {
        this.evidence = evidence;
        this.type = type;
        this.section = new Section(type);
    }

    void set() {
        figures();
        new WoundPage(evidence, type).set();
        notFound();
        points();
        pictures();
    }

    private void figures() {
        List<FigureRow> rows = FigureRow.found(evidence.session().findings());
        if (rows.isEmpty()) {
            return;
        }
        section.begin("Figures", 90);
        Table table = new Table(type, FIGURES, 2.2f, FigureList.COLUMNS);
        table.head();
        Set<FigureName> defined = new HashSet<>();
        rows.forEach(row -> table.spans(
                FigureList.cells(row),
                (defined.add(row.name())
                                ? Typography.of(row.figure()
                                                .map(Figure::definition)
                                                .orElse("")) + "; "
                                : "")
                        + FigureList.below(row)));
        type.down(4);
        section.small(
                "The line below a figure says what it is, gives its coverage factor k and says where it holds. U is the"
                        + " expanded uncertainty for a coverage probability of 95 %; k differs from figure to figure, and"
                        + " from the operating points', because what each is made of is distributed in another way. Expected is what the design sheet leads to"
                        + " expect, with its own uncertainty at 95 %; 'more' or 'less' where measured and expected"
                        + " differ by more than both explain.");
        reasons();
    }

    /** Why a requirement came to anything but a plain pass; those that could not be judged for one reason together. */
    private void reasons() {
        Map<String, List<String>> open = new LinkedHashMap<>();
        for (FigureRow row : FigureRow.judged(evidence.session().findings())) {
            Verdict verdict = row.verdict().orElseThrow();
            if (verdict.outcome() == Outcome.NOT_JUDGED) {
                open.computeIfAbsent(verdict.reason(), reason -> new ArrayList<>())
                        .add(row.label());
            } else if (verdict.outcome() != Outcome.PASS) {
                section.paragraph(List.of(
                        Span.strong(row.verdictText() + ": "),
                        Span.plain(row.label() + ", " + FigureList.behind(row, Typography.of(row.limitText())) + ": "
                                + Reasons.of(verdict, evidence))));
            }
        }
        open.forEach((reason, figures) -> section.paragraph(List.of(
                Span.strong("not judged, " + Typography.of(reason) + ": "), Span.plain(String.join("; ", figures)))));
    }

    private void notFound() {
        Findings findings = evidence.session().findings();
        if (findings.notFound().isEmpty() && findings.impliedTurns().isEmpty()) {
            return;
        }
        section.begin("Not found, and remarks", 20);
        Map<String, Map<String, List<String>>> why = new LinkedHashMap<>();
        findings.notFound().forEach(missing -> {
            List<String> rails = why.computeIfAbsent(missing.reason(), reason -> new LinkedHashMap<>())
                    .computeIfAbsent(missing.name().word(), name -> new ArrayList<>());
            missing.rail().ifPresent(rails::add);
        });
        why.forEach((reason, figures) -> section.paragraph(List.of(
                Span.strong(Typography.of(reason) + ": "),
                Span.plain(figures.entrySet().stream()
                        .map(one -> one.getKey()
                                + (one.getValue().isEmpty() ? "" : ", " + String.join(" and ", one.getValue())))
                        .collect(Collectors.joining("; "))))));
        findings.impliedTurns()
                .forEach((rail, turns) -> section.paragraph(
                        List.of(Span.strong("turns, " + rail + " rail: "), Span.plain(turns.words()))));
    }

    private void points() {
        List<OperatingPoint> points = evidence.session().findings().points();
        if (points.isEmpty()) {
            return;
        }
        section.begin("Operating points", 80);
        powers(points);
        List<String> rails = points.stream()
                .flatMap(point -> point.rails().keySet().stream())
                .distinct()
                .toList();
        for (int i = 0; i < rails.size(); i += RAILS_IN_A_TABLE) {
            type.down(12);
            type.need(60);
            rails(points, rails.subList(i, Math.min(rails.size(), i + RAILS_IN_A_TABLE)));
        }
        type.down(4);
        section.small("Each value is the mean of " + counts(points)
                + " readings over the averaged part of its step, with its expanded uncertainty U at 95 %"
                + " (k " + factors(points)
                + ")"
                + (points.stream().anyMatch(point -> unknown(point))
                        ? "; a value without U was read with an instrument whose accuracy is not stated."
                        : ".")
                + (points.stream().allMatch(OperatingPoint::settled)
                        ? ""
                        : " An asterisk: not settled when its time was over."));
    }

    private static boolean unknown(OperatingPoint point) {
        return !point.loss().known()
                || point.rails().values().stream().anyMatch(rail -> rail.rippleRms()
                        .filter(ripple -> !ripple.known())
                        .isPresent());
    }

    private void powers(List<OperatingPoint> points) {
        Table table = new Table(
                type,
                Section.DENSE,
                1.8f,
                List.of(
                        Column.words("step", 92),
                        Column.numbers("input, V", 70),
                        Column.numbers("input, A", 73),
                        Column.numbers("input, W", 66),
                        Column.numbers("output, W", 66),
                        Column.numbers("loss, W", 64),
                        Column.numbers("efficiency, %", 62)));
        table.head();
        for (OperatingPoint point : points) {
            table.row(List.of(
                    step(point),
                    Digits.of(point.input().voltage(), 1),
                    Digits.of(point.input().current(), 1),
                    Digits.of(point.input().power(), 1),
                    Digits.of(point.outputPower(), 1),
                    Digits.of(point.loss(), 1),
                    point.efficiency()
                            .filter(known -> point.outputPower().value() > 0)
                            .map(known -> Digits.of(known, 100))
                            .orElse("")));
        }
    }

    private void rails(List<OperatingPoint> points, List<String> rails) {
        List<Column> columns = new ArrayList<>(List.of(Column.words("step", 80)));
        for (String rail : rails) {
            columns.add(Column.numbers(rail + ", V", 73));
            columns.add(Column.numbers("expected", 50));
            columns.add(Column.numbers(rail + ", A", 62));
            columns.add(Column.numbers("ripple, mV rms", 50));
        }
        Table table = new Table(type, Section.DENSE, 1.8f, columns);
        table.head();
        for (OperatingPoint point : points) {
            List<String> cells = new ArrayList<>(List.of(step(point)));
            for (String rail : rails) {
                Optional<RailPoint> at = point.rail(rail);
                cells.add(at.map(one -> Digits.of(one.voltage(), 1)).orElse(""));
                cells.add(evidence.session()
                        .findings()
                        .against()
                        .at(point)
                        .value(Expected.voltage(rail))
                        .map(value -> Digits.of(value, 1))
                        .orElse(""));
                cells.add(at.map(one -> Digits.of(one.current(), 1)).orElse(""));
                cells.add(at.flatMap(RailPoint::rippleRms)
                        .map(ripple -> Digits.of(ripple, 1000))
                        .orElse(""));
            }
            table.row(cells);
        }
    }

    private static String counts(List<OperatingPoint> points) {
        var counts = points.stream().mapToInt(OperatingPoint::count).summaryStatistics();
        return counts.getMin() == counts.getMax()
                ? String.valueOf(counts.getMin())
                : counts.getMin() + " to " + counts.getMax();
    }

    private static String step(OperatingPoint point) {
        return point.stage().replace('-', ' ') + ", " + point.step() + (point.settled() ? "" : " *");
    }

    private static String factors(List<OperatingPoint> points) {
        var k = points.stream()
                .flatMap(point -> java.util.stream.Stream.concat(
                        java.util.stream.Stream.of(
                                point.input().voltage(), point.input().current(), point.outputPower(), point.loss()),
                        point.rails().values().stream().map(RailPoint::voltage)))
                .filter(value -> value.known() && value.u() > 0)
                .mapToDouble(value -> value.coverage(FigureRow.PROBABILITY).k())
                .summaryStatistics();
        return k.getCount() == 0
                ? "not known"
                : String.format(java.util.Locale.ROOT, "from %.2f to %.2f", k.getMin(), k.getMax());
    }

    private void pictures() {
        SessionCharts charts = new SessionCharts(evidence.session());
        List<Chart> drawn = new ArrayList<>();
        charts.railsAgainstLoad().ifPresent(drawn::add);
        charts.railsAgainstInput().ifPresent(drawn::add);
        charts.efficiencyAgainstLoad().ifPresent(drawn::add);
        charts.lossAgainstLoad().ifPresent(drawn::add);
        drawn.addAll(evidence.holdCharts());
        if (drawn.isEmpty()) {
            return;
        }
        section.begin("Pictures", PICTURE_HEIGHT + 40);
        new Pictures(type).flow(drawn, PICTURE_HEIGHT);
        type.down(6);
        section.small(
                "Solid: measured, whiskers, where long enough to be seen, are U at 95 %. Dashed: predicted by the design sheet for a sound unit at"
                        + " the input voltage measured. Rails by their magnitudes; the second rail long-dashed. Pictures of one unit"
                        + " beside each other have one axis.");
    }
}
