package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.findings.Findings;
import railwitness.logger.reporting.findings.FigureRow;

/**
 * What an earlier test of the unit found, as far as it was asked for: to stand beside the figures of now.
 *
 * @param all by the figure's label
 */
record EarlierFigures(Map<String, Found> all) {
    static final EarlierFigures NONE = new EarlierFigures(Map.of());

    /**
     * One figure.
     *
     * @param value in SI
     * @param shown as it is printed, without its unit
     * @param verdict in words; empty where nothing was asked
     */
    record Found(double value, String shown, String verdict) {}

    static EarlierFigures of(Findings findings) {
        Map<String, Found> all = new LinkedHashMap<>();
        FigureRow.judgedFirst(findings).forEach(row -> row.figure()
                .ifPresent(figure -> all.putIfAbsent(
                        row.label(), new Found(figure.value().value(), row.valueText(), row.verdictText()))));
        return new EarlierFigures(all);
    }

    Optional<Found> of(FigureRow row) {
        return Optional.ofNullable(all.get(row.label()));
    }

    long met() {
        return all.values().stream()
                .filter(found -> found.verdict().endsWith("pass"))
                .count();
    }

    long judged() {
        return all.values().stream().filter(found -> !found.verdict().isEmpty()).count();
    }

    /** A line for each. */
    String text() {
        List<String> lines = new ArrayList<>();
        all.forEach((label, found) ->
                lines.add(String.join("\t", label, Double.toString(found.value()), found.shown(), found.verdict())));
        return String.join("\n", lines);
    }

    /** What {@link #text()} wrote; lines that are none of it are left out. */
    static EarlierFigures of(String text) {
        Map<String, Found> all = new LinkedHashMap<>();
        for (String line : text.split("\n")) {
            String[] parts = line.split("\t", -1);
            if (parts.length == 4 && parts[1].matches("-?[0-9.]+(E-?[0-9]+)?")) {
                all.put(parts[0], new Found(Double.parseDouble(parts[1]), parts[2], parts[3]));
            }
        }
        return new EarlierFigures(all);
    }
}
