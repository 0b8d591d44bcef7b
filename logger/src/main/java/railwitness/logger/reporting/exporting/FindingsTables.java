package railwitness.logger.reporting.exporting;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.findings.FigureRow;
import railwitness.logger.reporting.findings.SessionFindings;

/** Operating points and figures as tables; each value with its standard uncertainty beside it. */
final class FindingsTables {
    private final SessionFindings findings;

    FindingsTables(SessionFindings findings) {
        this.findings = findings;
    }

    void points(Path file) throws IOException {
        List<OperatingPoint> points = findings.findings().points();
        List<Map<String, Estimate>> rows =
                points.stream().map(FindingsTables::values).toList();
        Set<String> names = new LinkedHashSet<>();
        rows.forEach(row -> names.addAll(row.keySet()));
        List<String> columns =
                new ArrayList<>(List.of("stage", "step", "readings", "from_s", "to_s", "settled", "input_measured"));
        names.forEach(name -> columns.addAll(List.of(name, "u." + name)));
        try (CsvTable table = CsvTable.create(file)) {
            table.head(columns);
            for (int i = 0; i < points.size(); i++) {
                OperatingPoint point = points.get(i);
                table.text(point.stage()).text(point.step()).plain(Integer.toString(point.count()));
                table.number(point.fromSeconds()).number(point.toSeconds());
                table.plain(point.settled() ? "yes" : "no")
                        .plain(point.inputSource().words());
                for (String name : names) {
                    estimate(table, Optional.ofNullable(rows.get(i).get(name)));
                }
                table.end();
            }
        }
    }

    private static Map<String, Estimate> values(OperatingPoint point) {
        Map<String, Estimate> values = new LinkedHashMap<>();
        values.put("input.voltage_V", point.input().voltage());
        values.put("input.current_A", point.input().current());
        values.put("input.power_W", point.input().power());
        point.rails().forEach((name, rail) -> {
            values.put(name + ".voltage_V", rail.voltage());
            values.put(name + ".current_A", rail.current());
            values.put(name + ".power_W", rail.power());
            rail.rippleRms().ifPresent(ripple -> values.put(name + ".ripple_V", ripple));
        });
        values.put("output.power_W", point.outputPower());
        values.put("loss_W", point.loss());
        point.efficiency().ifPresent(efficiency -> values.put("efficiency_1", efficiency));
        point.temperatures().forEach((node, value) -> values.put(node + ".temperature_degC", value));
        return values;
    }

    /** u stays empty where the accuracy behind a value is not stated. */
    private static void estimate(CsvTable table, Optional<Estimate> value) throws IOException {
        table.plain(value.map(known -> ShortestNumber.of(known.value())).orElse(""));
        table.plain(value.filter(Estimate::known)
                .map(known -> ShortestNumber.of(known.u()))
                .orElse(""));
    }

    void figures(Path file) throws IOException {
        try (CsvTable table = CsvTable.create(file)) {
            table.head(List.of(
                    "figure",
                    "rail",
                    "value",
                    "u",
                    "U",
                    "k",
                    "unit",
                    "at",
                    "definition",
                    "limit",
                    "verdict",
                    "reason",
                    "expected",
                    "u.expected",
                    "differs"));
            for (FigureRow row : FigureRow.found(findings.findings())) {
                figure(table, row);
            }
        }
    }

    /** In SI units and full length: other programs read it. */
    private static void figure(CsvTable table, FigureRow row) throws IOException {
        Figure figure = row.figure().orElseThrow();
        table.text(row.name().word()).text(row.rail().orElse(""));
        estimate(table, Optional.of(figure.value()));
        if (figure.value().known()) {
            Coverage coverage = figure.value().coverage(FigureRow.PROBABILITY);
            table.number(coverage.expanded()).number(coverage.k());
        } else {
            table.empty().empty();
        }
        table.plain(figure.unit()).text(figure.at()).text(figure.definition());
        table.text(row.verdict().map(one -> one.requirement().limit().words()).orElse(""))
                .text(row.verdictText())
                .text(row.verdict().map(Verdict::reason).orElse(""));
        estimate(table, row.expected().map(value -> value.scale(1.0 / row.unit().factor())));
        table.text(row.differsText());
        table.end();
    }
}
