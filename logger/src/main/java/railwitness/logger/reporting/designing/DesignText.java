package railwitness.logger.reporting.designing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import railwitness.analysis.transformer.DesignLine;
import railwitness.analysis.transformer.DesignReport;
import railwitness.analysis.transformer.DesignWords;
import railwitness.analysis.transformer.Drive;
import railwitness.analysis.transformer.RingSizes;
import railwitness.analysis.transformer.SheetGap;
import railwitness.analysis.transformer.Winding;
import railwitness.logger.reporting.findings.TextTable;
import railwitness.logger.text.VisibleText;

/** A transformer's design as a sheet of plain text: every number with its limit, its formula and its source. */
public final class DesignText {
    private final DesignReport report;
    private final List<String> lines = new ArrayList<>();

    private DesignText(DesignReport report) {
        this.report = report;
    }

    /** The text, its lines ended by line feeds. */
    public static String of(DesignReport report) {
        DesignText text = new DesignText(report);
        text.head();
        text.numbers();
        text.sources();
        text.weak();
        gaps(report.gaps(), text.lines);
        text.caution();
        return joined(text.lines);
    }

    static String joined(List<String> lines) {
        return lines.stream().map(VisibleText::line).collect(Collectors.joining("\n")) + "\n";
    }

    private void head() {
        lines.add("TRANSFORMER DESIGN   " + report.wound().design().unit().name());
        report.toroid().ifPresent(toroid -> {
            lines.add("core " + RingSizes.words(toroid.core()) + ", "
                    + toroid.core().material().name());
            lines.add("primary " + half(toroid.primary()) + "; secondary " + half(toroid.secondary()));
        });
        lines.add(drive(report.drive()));
        lines.add("");
        lines.add(report.verdict());
        lines.add("");
    }

    private static String half(Winding winding) {
        return winding.turns() + " + " + winding.turns() + " turns of "
                + winding.wire().words();
    }

    static String drive(Drive drive) {
        return String.format(
                Locale.ROOT,
                "%s Hz, duty %s, input %s to %s V, %s",
                DesignWords.number(drive.frequencyHz()),
                DesignWords.number(drive.duty()),
                DesignWords.number(drive.lowestVolts()),
                DesignWords.number(drive.highestVolts()),
                drive.softStart() ? "soft start" : "no soft start");
    }

    private void numbers() {
        TextTable table = new TextTable();
        table.row(List.of("", "", "value", "unit", "limit", "share", "source", "how it is found"));
        Optional<DesignLine> limiting = report.limiting();
        report.lines().stream()
                .filter(line -> limiting.isEmpty() || line != limiting.get())
                .forEach(line -> table.row(row(line)));
        limiting.ifPresent(line -> {
            table.rule();
            table.row(row(line));
            table.rule();
        });
        lines.addAll(table.lines(1));
    }

    private List<String> row(DesignLine line) {
        return List.of(
                line.name(),
                line.weak().isEmpty() ? "" : "about",
                DesignWords.number(line.value()),
                line.unit().equals("1") ? "" : line.unit(),
                line.atMost().isPresent()
                        ? "<= " + DesignWords.number(line.atMost().getAsDouble())
                        : line.atLeast().isPresent()
                                ? ">= " + DesignWords.number(line.atLeast().getAsDouble())
                                : "",
                line.share().isPresent()
                        ? String.format(
                                Locale.ROOT, "%.0f %%%s", 100 * line.share().getAsDouble(), line.holds() ? "" : " !")
                        : "",
                "[" + (places().indexOf(line.source()) + 1) + "]",
                line.formula());
    }

    private List<String> places() {
        Set<String> sources = new LinkedHashSet<>();
        report.lines().forEach(line -> sources.add(line.source()));
        return List.copyOf(sources);
    }

    private void sources() {
        lines.add("");
        lines.add("Sources of formulas and limits");
        List<String> places = places();
        for (int i = 0; i < places.size(); i++) {
            lines.add(String.format(Locale.ROOT, "  [%d] %s", i + 1, places.get(i)));
        }
    }

    private void weak() {
        List<String> words = report.lines().stream()
                .filter(line -> !line.weak().isEmpty())
                .map(line -> "  " + line.name() + ": " + line.weak())
                .toList();
        if (!words.isEmpty()) {
            lines.add("");
            lines.add("Weak estimates ('about')");
            lines.addAll(words);
        }
    }

    static void gaps(List<SheetGap> gaps, List<String> lines) {
        if (!gaps.isEmpty()) {
            lines.add("");
            lines.add("What the sheet does not say, and what that costs");
            gaps.forEach(gap -> lines.add("  " + gap.keys() + ": " + gap.costs()));
        }
    }

    private void caution() {
        lines.add("");
        lines.add("Insulation between the windings is not judged here: it takes proper equipment.");
    }
}
