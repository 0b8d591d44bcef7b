package railwitness.logger.reporting.findings;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.text.VisibleText;

/** Findings as a sheet of plain text, for the command line. */
public final class FindingsText {
    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final int MOST_EVENTS = 20;
    private static final int LINES_SHOWN = 3;

    private final SessionFindings session;
    private final List<String> lines = new ArrayList<>();

    private FindingsText(SessionFindings session) {
        this.session = session;
    }

    /** The sheet, its lines ended by line feeds. */
    public static String of(SessionFindings session) {
        FindingsText text = new FindingsText(session);
        text.contradictions();
        text.head();
        text.points();
        text.figures();
        text.notFound();
        text.losses();
        text.waveforms();
        text.causes();
        text.coldResistances();
        text.notReached();
        text.events();
        text.remarks();
        text.notes();
        return text.lines.stream().map(VisibleText::line).collect(Collectors.joining("\n")) + "\n";
    }

    private void contradictions() {
        List<Contradiction> against = session.findings().contradictions();
        against.forEach(one -> {
            lines.add("CONTRADICTION   " + one.text());
            lines.add("  check: " + one.check());
        });
        if (!against.isEmpty()) {
            lines.add("");
        }
    }

    private void head() {
        var head = session.head();
        lines.add("FINDINGS" + (head.rehearsal() ? "   --   REHEARSAL on the virtual bench, no real unit" : ""));
        lines.add(head.unitName()
                + (head.unitSerial().isEmpty() ? "" : ", serial " + head.unitSerial())
                + (head.unitCondition().isEmpty() ? "" : ", " + head.unitCondition()));
        lines.add("Session " + head.id() + ", " + MINUTE.format(head.startedWall()) + ", "
                + session.state().word());
        if (!session.chain().isKnown()) {
            lines.add(session.chain().words() + " (--whole works it out)");
        }
        lines.add("");
        if (session.state() == SessionState.TRIPPED) {
            lines.add("TRIPPED   "
                    + session.events().stream()
                            .filter(event -> event.what().equals("trip"))
                            .findFirst()
                            .map(EventEntry::text)
                            .orElse("the run ended by itself"));
        }
        lines.add(verdictLine());
        session.findings().verdicts().stream()
                .findFirst()
                .ifPresent(first -> lines.add("decision rule: " + first.rule().words()));
        lines.add("");
    }

    private String verdictLine() {
        List<Verdict> verdicts = session.findings().verdicts();
        long met = verdicts.stream()
                .filter(v -> v.outcome() == Outcome.PASS || v.outcome() == Outcome.CONDITIONAL_PASS)
                .count();
        String count =
                verdicts.isEmpty() ? "no requirements to judge" : met + " of " + verdicts.size() + " requirements met";
        Fitness fitness = session.findings().verdict();
        return switch (fitness) {
            case FIT -> "FIT TO RETURN   " + count;
            case NOT_FIT -> "NOT FIT TO RETURN   " + count;
            case NOT_JUDGED -> "NOT JUDGED   " + count;
        };
    }

    private void points() {
        List<OperatingPoint> points = session.findings().points();
        if (points.isEmpty()) {
            lines.add("No step was measured.");
            lines.add("");
            return;
        }
        Set<String> rails = new LinkedHashSet<>();
        points.forEach(point -> rails.addAll(point.rails().keySet()));
        TextTable table = new TextTable();
        List<String> head = new ArrayList<>(List.of("stage", "step", "input V", "input A"));
        rails.forEach(rail -> head.addAll(List.of(rail + " V", "load A", "ripple mV")));
        head.addAll(List.of("in W", "out W", "loss W", "eff %"));
        table.row(head);
        table.rule();
        points.forEach(point -> table.row(cells(point, rails)));
        lines.addAll(table.lines(2));
        if (points.stream().anyMatch(point -> !point.settled())) {
            lines.add("* not settled within its time");
        }
        points.stream()
                .filter(point -> session.waitedSeconds(point).isPresent())
                .max(java.util.Comparator.comparingDouble(
                        point -> session.waitedSeconds(point).getAsDouble()))
                .ifPresent(point -> lines.add(String.format(
                        Locale.ROOT,
                        "longest time from set points to average: %.1f s, %s %s",
                        session.waitedSeconds(point).getAsDouble(),
                        point.stage(),
                        point.step())));
        lines.add("");
    }

    private static List<String> cells(OperatingPoint point, Set<String> rails) {
        List<String> cells = new ArrayList<>();
        cells.add(point.stage());
        cells.add(point.step() + (point.settled() ? "" : " *"));
        cells.add(fixed(point.input().voltage(), 3));
        cells.add(fixed(point.input().current(), point.input().current().value() < 0.1 ? 5 : 3));
        for (String rail : rails) {
            Optional<RailPoint> found = point.rail(rail);
            cells.add(found.map(r -> fixed(r.voltage(), 3)).orElse(""));
            cells.add(found.map(r -> fixed(r.current(), 3)).orElse(""));
            cells.add(found.flatMap(RailPoint::rippleRms)
                    .map(ripple -> fixed(ripple.scale(1000), 1))
                    .orElse(""));
        }
        cells.add(fixed(point.input().power(), 2));
        cells.add(fixed(point.outputPower(), 2));
        cells.add(fixed(point.loss(), 2));
        cells.add(point.efficiency()
                .filter(efficiency -> point.outputPower().value() > 0)
                .map(efficiency -> fixed(efficiency.scale(100), 2))
                .orElse(""));
        return cells;
    }

    private void figures() {
        if (session.findings().figures().isEmpty()) {
            return;
        }
        TextTable table = new TextTable();
        table.row(List.of("figure", "value", "U (95 %)", "unit", "k", "limit", "verdict", "P", "at"));
        table.rule();
        for (Figure figure : session.findings().figures()) {
            table.row(cells(figure));
        }
        lines.addAll(table.lines(1));
        lines.add("");
        session.findings().verdicts().stream()
                .filter(v -> v.outcome() != Outcome.PASS)
                .forEach(v ->
                        lines.add(v.outcome().words() + ": " + v.requirement().name() + " (" + v.reason() + ")"));
        if (!lines.get(lines.size() - 1).isEmpty()) {
            lines.add("");
        }
    }

    private List<String> cells(Figure figure) {
        Optional<Verdict> verdict = session.findings().verdicts().stream()
                .filter(v -> v.requirement().figure().equals(figure.name().word())
                        && v.requirement().rail().equals(figure.rail()))
                .findFirst();
        Estimate value = figure.value();
        List<String> cells = new ArrayList<>();
        cells.add(figure.label());
        if (value.known() && value.u() > 0) {
            Coverage coverage = value.coverage(0.95);
            Rounding rounded = Rounding.expanded(value, coverage);
            cells.addAll(List.of(
                    rounded.valueText(),
                    rounded.uncertaintyText(),
                    figure.unit(),
                    String.format(Locale.ROOT, "%.2f", coverage.k())));
        } else {
            cells.addAll(List.of(
                    String.format(Locale.ROOT, "%.5g", value.value()),
                    value.known() ? "0" : "not known",
                    figure.unit(),
                    ""));
        }
        cells.add(verdict.map(v -> v.requirement().limit().words()).orElse(""));
        cells.add(verdict.map(v -> v.outcome().words()).orElse(""));
        cells.add(verdict.filter(v -> v.probability().isPresent())
                .map(v -> String.format(Locale.ROOT, "%.3f", v.probability().getAsDouble()))
                .orElse(""));
        cells.add(figure.at());
        return cells;
    }

    private void notFound() {
        session.findings()
                .notFound()
                .forEach(missing -> lines.add("not found: " + missing.name().word()
                        + missing.rail().map(rail -> ", " + rail).orElse("") + ": " + missing.reason()));
        session.findings().impliedTurns().forEach((rail, turns) -> lines.add("turns, " + rail + ": " + turns.words()));
        lines.add("");
    }

    private void losses() {
        session.findings().lossSplit().ifPresent(split -> {
            double amps = session.findings().points().stream()
                    .mapToDouble(point -> point.rails().values().stream()
                            .mapToDouble(rail -> rail.current().value())
                            .sum())
                    .max()
                    .orElse(0);
            List<Estimate> parts = split.at(amps);
            lines.add(String.format(
                    Locale.ROOT,
                    "loss at %.3g A in all: fixed %s, with current %s, with its square %s",
                    amps,
                    watts(parts.get(0)),
                    watts(parts.get(1)),
                    watts(parts.get(2))));
            split.warning().ifPresent(lines::add);
        });
        session.findings().sagSplit().ifPresent(split -> {
            StringBuilder own = new StringBuilder();
            split.ownOhms()
                    .forEach((rail, ohms) ->
                            own.append(", ").append(rail).append("'s own ").append(ohms(ohms)));
            lines.add("sag at held input: shared by the rails " + ohms(split.sharedOhms()) + own);
            split.warning().ifPresent(lines::add);
        });
        lines.add("");
    }

    private static String watts(Estimate value) {
        return withU(value) + " W";
    }

    private static String ohms(Estimate value) {
        return withU(value) + " ohm";
    }

    private static String withU(Estimate value) {
        return value.known() && value.u() > 0
                ? Rounding.expanded(value, value.coverage(0.95)).toString()
                : String.format(Locale.ROOT, "%.4g", value.value());
    }

    private void waveforms() {
        session.waveforms()
                .forEach((rail, wave) -> lines.add(String.format(
                        Locale.ROOT,
                        "waveform, %s: %.4g V peak to peak, %.4g V rms%s; %s%s",
                        rail,
                        wave.peakToPeak().value(),
                        wave.rms().value(),
                        wave.bandwidthHz().isPresent()
                                ? String.format(
                                        Locale.ROOT,
                                        " in %.3g MHz",
                                        wave.bandwidthHz().getAsDouble() / 1e6)
                                : ", bandwidth not stated",
                        wave.atCycleVolts().isPresent() && wave.atTwiceVolts().isPresent()
                                ? String.format(
                                        Locale.ROOT,
                                        "%.3g V at the switching frequency against %.3g V at twice it; ",
                                        wave.atCycleVolts().getAsDouble(),
                                        wave.atTwiceVolts().getAsDouble())
                                : "",
                        "largest lines "
                                + String.join(
                                        ", ",
                                        wave.spectrum().peaks(LINES_SHOWN).stream()
                                                .map(line -> String.format(
                                                        Locale.ROOT,
                                                        "%.4g kHz %.3g V",
                                                        line.hertz() / 1000,
                                                        line.volts()))
                                                .toList()))));
        if (!session.waveforms().isEmpty()) {
            lines.add("");
        }
    }

    private void causes() {
        for (Cause cause : session.findings().causes()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "probable cause%s: %s (%s, fit %.2f)",
                    cause.rail().map(rail -> ", " + rail + " rail").orElse(""),
                    cause.text(),
                    cause.code().word(),
                    cause.fit()));
            cause.supports().forEach(reason -> lines.add("  for: " + reason));
            cause.against().forEach(reason -> lines.add("  against: " + reason));
            lines.add("  check next: " + cause.checkNext());
            if (!cause.alike().isEmpty()) {
                lines.add("  not told apart from: "
                        + String.join(
                                ", ",
                                cause.alike().stream().map(code -> code.word()).toList()));
            }
            lines.add("");
        }
    }

    private void coldResistances() {
        List<String> taken = session.events().stream()
                .filter(event -> event.what().equals("cold resistance"))
                .map(event -> event.text().replaceFirst("^Cold resistance, ", ""))
                .toList();
        if (!taken.isEmpty()) {
            lines.add("cold resistances before power: " + String.join("; ", taken));
        }
    }

    private void notReached() {
        for (StepEntry step : session.steps()) {
            if (step.outcome() != StepOutcome.MEASURED) {
                lines.add(step.outcome().words() + ": " + step.stage() + ", " + step.step() + ": " + step.reason());
            }
        }
    }

    private void events() {
        List<EventEntry> told = session.outOfTheOrdinary();
        told.stream()
                .limit(MOST_EVENTS)
                .forEach(event -> lines.add(String.format(
                        Locale.ROOT, "at %.1f s, %s: %s", event.nanos() / 1e9, event.what(), event.text())));
        if (told.size() > MOST_EVENTS) {
            lines.add("and " + (told.size() - MOST_EVENTS) + " more events");
        }
        session.events().stream()
                .filter(event -> event.what().equals("off"))
                .reduce((first, last) -> last)
                .ifPresent(event -> lines.add("after power: " + event.text()));
    }

    private void remarks() {
        if (session.bench().isEmpty()) {
            lines.add("accuracy unknown: no bench sheet; values stand as given");
        }
        if (session.design().isEmpty()) {
            lines.add("no design sheet: all is worked out, nothing compared");
        }
        session.findings().points().stream()
                .map(point -> point.inputSource().words())
                .distinct()
                .forEach(words -> lines.add("input voltage: " + words));
        session.design().ifPresent(design -> {
            if (!design.connected().isEmpty()) {
                lines.add("connected throughout: " + String.join(", ", design.connected()));
            }
        });
    }

    private void notes() {
        List<String> notes = FigureNotes.of(session.findings().figures());
        if (!notes.isEmpty()) {
            lines.add("");
            lines.add("What the figures are, and what their uncertainty comes from (shares of its square):");
            lines.addAll(notes);
        }
    }

    private static String fixed(Estimate value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value.value());
    }
}
