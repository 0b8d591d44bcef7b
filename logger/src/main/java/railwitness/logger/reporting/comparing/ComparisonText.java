package railwitness.logger.reporting.comparing;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import railwitness.logger.reporting.findings.PlainWords;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.reporting.findings.TextTable;
import railwitness.logger.text.VisibleText;

/** A comparison as plain text, for the command line. */
public final class ComparisonText {
    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private static final int LONGEST_LINE = 4_000;
    private static final int LONGEST_NAME = 300;

    private final Comparison comparison;
    private final List<String> lines = new ArrayList<>();

    private ComparisonText(Comparison comparison) {
        this.comparison = comparison;
    }

    /** The text, its lines ended by line feeds. */
    public static String of(Comparison comparison) {
        ComparisonText text = new ComparisonText(comparison);
        text.head();
        if (comparison.charts().isEmpty()) {
            IntStream.range(1, comparison.sessions().size()).forEach(text::against);
        } else {
            text.unlike();
            text.values();
            text.charts();
        }
        text.steps();
        return text.lines.stream()
                        .map(line -> VisibleText.line(VisibleText.shortened(line, LONGEST_LINE)))
                        .collect(Collectors.joining("\n"))
                + "\n";
    }

    private void head() {
        boolean rehearsal =
                comparison.sessions().stream().anyMatch(s -> s.head().rehearsal());
        lines.add("COMPARISON" + (rehearsal ? "   --   REHEARSAL on the virtual bench, no real unit" : ""));
        for (int i = 0; i < comparison.sessions().size(); i++) {
            lines.add(Comparison.letter(i) + "  " + line(comparison.sessions().get(i)));
            comparison
                    .sessions()
                    .get(i)
                    .findings()
                    .contradictions()
                    .forEach(one -> lines.add("   CONTRADICTION   " + one.text() + "; check: " + one.check()));
            if (comparison.charts().isEmpty()) {
                lines.add("   " + PlainWords.of(comparison.sessions().get(i)).off());
            }
        }
        if (comparison.sessions().stream()
                        .map(s -> s.head().unitName())
                        .distinct()
                        .count()
                > 1) {
            lines.add("These are units of different names; a difference then is one of model, too.");
        }
        lines.add("");
    }

    private static String name(String text) {
        return VisibleText.shortened(text, LONGEST_NAME);
    }

    static String line(SessionFindings session) {
        var head = session.head();
        return name(head.unitName())
                + (head.unitSerial().isEmpty() ? "" : ", serial " + name(head.unitSerial()))
                + (head.unitCondition().isEmpty() ? "" : ", " + name(head.unitCondition())) + "; session "
                + name(head.id()) + ", " + MINUTE.format(head.startedWall()) + ", "
                + session.state().word() + "; "
                + session.findings().verdict().words();
    }

    private void against(int later) {
        String name = Comparison.letter(later);
        ChangeWords words = new ChangeWords(comparison);
        lines.add(name + " against A: " + words.against(later));
        lines.add(words.chance(later));
        lines.add(Matter.rule());
        lines.add("Errors of the same instrument on the same range cancel in a difference, but for "
                + Math.round(100 * Change.DRIFT_SHARE) + " % allowed for its drift in between.");
        lines.add("");
        TextTable table = new TextTable();
        table.row(List.of("figure", "unit", "A", name, "expected", name + " - A", "U (95 %)", "answer"));
        table.rule();
        comparison.figures().forEach(figure -> table.row(row(figure, later)));
        lines.addAll(table.lines(2));
        lines.add("expected: of " + name + " by its design sheet, with its own U; ! where they differ beyond both");
        comparison.figures().stream()
                .filter(Compared::atOtherPoints)
                .filter(figure -> figure.changes().get(later).isPresent())
                .forEach(figure -> lines.add(
                        "* " + figure.label() + ": A at " + figure.notes().get(0) + "; " + name + " at "
                                + figure.notes().get(later)));
        lines.add("");
    }

    private List<String> row(Compared figure, int later) {
        Optional<Change> change = figure.changes().get(later);
        List<String> row = new ArrayList<>(List.of(
                figure.label() + (figure.atOtherPoints() ? " *" : ""),
                figure.unit(),
                Print.value(figure, 0),
                Print.value(figure, later),
                Print.expected(figure, later)));
        row.add(change.map(Print::difference).orElse(""));
        row.add(change.map(Print::expanded).orElse(""));
        row.add(change.map(c -> new Matter(comparison).words(figure, c)).orElse("not found in both"));
        return row;
    }

    private void unlike() {
        if (comparison.unlike().isEmpty()) {
            lines.add("All " + comparison.sessions().size() + " units are alike in every figure.");
        }
        lines.add(new ChangeWords(comparison).chanceOfSignals());
        comparison.unlike().forEach((place, charts) -> {
            lines.add(Comparison.letter(place) + " is unlike its sisters"
                    + serial(comparison.sessions().get(place)) + ":");
            for (SisterChart chart : charts) {
                lines.add("  " + chart.figure().label() + " "
                        + Print.plain(chart.chart().values().get(place)) + " "
                        + chart.figure().unit() + ", mean of all "
                        + Print.plain(chart.chart().centre()) + " (" + String.join("; ", chart.reasons(place)) + ")");
            }
        });
        lines.add("");
    }

    private static String serial(SessionFindings session) {
        return session.head().unitSerial().isEmpty()
                ? ""
                : " (serial " + name(session.head().unitSerial()) + ")";
    }

    private void values() {
        TextTable table = new TextTable();
        List<String> head = new ArrayList<>(List.of("figure", "unit"));
        IntStream.range(0, comparison.sessions().size())
                .mapToObj(Comparison::letter)
                .forEach(head::add);
        table.row(head);
        table.rule();
        for (Compared figure : comparison.figures()) {
            List<String> row = new ArrayList<>(List.of(figure.label(), figure.unit()));
            for (int i = 0; i < comparison.sessions().size(); i++) {
                row.add(Print.value(figure, i));
            }
            table.row(row);
        }
        lines.addAll(table.lines(2));
        lines.add("");
    }

    private void charts() {
        lines.add(
                "Control chart of individuals and moving ranges, units in the order of time, limits without those that give"
                        + " a signal:");
        TextTable table = new TextTable();
        table.row(
                List.of("figure", "unit", "mean", "lower", "upper", "mean range", "range limit", "unlike", "jump at"));
        table.rule();
        for (SisterChart chart : comparison.charts()) {
            table.row(List.of(
                    chart.figure().label(),
                    chart.figure().unit(),
                    Print.plain(chart.chart().centre()),
                    Print.plain(chart.chart().lower()),
                    Print.plain(chart.chart().upper()),
                    Print.plain(chart.chart().meanRange()),
                    Print.plain(chart.chart().upperRange()),
                    letters(chart.unlike()),
                    letters(chart.chart().jumps())));
        }
        lines.addAll(table.lines(2));
        lines.add("");
    }

    private static String letters(java.util.Collection<Integer> places) {
        return places.stream().map(Comparison::letter).collect(Collectors.joining(" "));
    }

    private void steps() {
        Set<String> quantities = new LinkedHashSet<>();
        comparison.steps().forEach(step -> step.values().forEach(value -> quantities.add(value.label())));
        quantities.forEach(this::quantity);
    }

    private void quantity(String label) {
        boolean two = comparison.sessions().size() == 2;
        TextTable table = new TextTable();
        List<String> head = new ArrayList<>(List.of("stage", "step"));
        IntStream.range(0, comparison.sessions().size())
                .mapToObj(Comparison::letter)
                .forEach(head::add);
        if (two) {
            head.addAll(List.of("B - A", "U (95 %)", "answer"));
        }
        table.row(head);
        table.rule();
        String unit = "";
        for (ComparedStep step : comparison.steps()) {
            for (Compared value : step.values()) {
                if (value.label().equals(label)) {
                    unit = value.unit();
                    table.row(row(step, value, two));
                }
            }
        }
        lines.add(label + ", " + unit);
        lines.addAll(table.lines(2));
        lines.add("");
    }

    private List<String> row(ComparedStep step, Compared value, boolean two) {
        List<String> row = new ArrayList<>(List.of(step.stage(), step.step()));
        for (int i = 0; i < comparison.sessions().size(); i++) {
            row.add(Print.value(value, i));
        }
        if (two) {
            Optional<Change> change = value.changes().get(1);
            row.add(change.map(Print::difference).orElse(""));
            row.add(change.map(Print::expanded).orElse(""));
            row.add(change.map(c -> c.answer().words()).orElse("not in both"));
        }
        return row;
    }
}
