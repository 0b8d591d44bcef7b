package railwitness.logger.reporting.findings;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.analysis.expected.Expected;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;
import railwitness.analysis.verdict.Outcome;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.text.VisibleText;

/** Findings as a sheet of plain text, for the command line. */
public final class FindingsText {
    /** Readings further off than one in a hundred would be do not fit a cause. */
    private static final double FITS = 0.01;

    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final int MOST_EVENTS = 20;
    private static final int LINES_SHOWN = 3;
    private static final int RAILS_IN_A_TABLE = 2;
    private static final int WIDEST = 100;

    private final SessionFindings session;
    private final List<String> lines = new ArrayList<>();

    private FindingsText(SessionFindings session) {
        this.session = session;
    }

    /** The sheet, its lines ended by line feeds and no wider than {@value #WIDEST} signs. */
    public static String of(SessionFindings session) {
        return of(session, false);
    }

    /**
     * The same.
     *
     * @param notes with what each figure means, where it holds, and what its uncertainty comes from
     */
    public static String of(SessionFindings session, boolean notes) {
        FindingsText text = new FindingsText(session);
        text.contradictions();
        text.head();
        text.figures();
        text.causes();
        text.points();
        session.findings()
                .soak()
                .ifPresent(soak -> text.lines.addAll(
                        SoakText.lines(soak, session.findings().points())));
        text.wound();
        text.notFound();
        text.losses();
        text.waveforms();
        text.coldResistances();
        text.notReached();
        text.events();
        text.remarks();
        text.notes(notes);
        return text.lines.stream()
                        .map(VisibleText::line)
                        .flatMap(line -> WrappedText.lines(line, WIDEST, "    ").stream())
                        .collect(Collectors.joining("\n"))
                + "\n";
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

    private static String name(String text) {
        return VisibleText.shortened(text, LONGEST_NAME);
    }

    /** Of a longer name the beginning stands. */
    private static final int LONGEST_NAME = 300;

    private void head() {
        var head = session.head();
        lines.add("FINDINGS" + (head.rehearsal() ? "   --   REHEARSAL on the virtual bench, no real unit" : ""));
        lines.add(name(head.unitName())
                + (head.unitSerial().isEmpty() ? "" : ", serial " + name(head.unitSerial()))
                + (head.unitCondition().isEmpty() ? "" : ", " + name(head.unitCondition())));
        lines.add("Session " + name(head.id()) + ", " + MINUTE.format(head.startedWall()) + ", "
                + session.state().word());
        if (!session.chain().isKnown()) {
            lines.add(session.chain().words() + " (--whole works it out)");
        }
        lines.add("");
        lines.addAll(WrappedText.lines(PlainWords.of(session).text(), WIDEST, ""));
        lines.add("");
    }

    private void points() {
        List<OperatingPoint> points = session.findings().points();
        if (points.isEmpty()) {
            return;
        }
        powers(points);
        List<String> rails = points.stream()
                .flatMap(point -> point.rails().keySet().stream())
                .distinct()
                .toList();
        for (int i = 0; i < rails.size(); i += RAILS_IN_A_TABLE) {
            rails(points, rails.subList(i, Math.min(rails.size(), i + RAILS_IN_A_TABLE)));
        }
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

    private void powers(List<OperatingPoint> points) {
        TextTable table = new TextTable();
        table.row(List.of("step", "in V", "in A", "in W", "out W", "loss W", "expected", "eff %", "expected"));
        table.rule();
        for (OperatingPoint point : points) {
            Expected expected = session.findings().against().at(point);
            table.row(List.of(
                    step(point),
                    fixed(point.input().voltage(), 3),
                    fixed(point.input().current(), point.input().current().value() < 0.1 ? 5 : 3),
                    fixed(point.input().power(), 2),
                    fixed(point.outputPower(), 2),
                    fixed(point.loss(), 2),
                    expected(expected, Expected.LOSS, 1),
                    point.efficiency()
                            .filter(efficiency -> point.outputPower().value() > 0)
                            .map(efficiency -> fixed(efficiency.scale(100), 2))
                            .orElse(""),
                    expected(expected, Expected.EFFICIENCY, 100)));
        }
        lines.addAll(table.lines(1, WIDEST));
        lines.add("");
    }

    private void rails(List<OperatingPoint> points, List<String> rails) {
        TextTable table = new TextTable();
        List<String> head = new ArrayList<>(List.of("step"));
        rails.forEach(rail -> head.addAll(List.of(rail + " A", rail + " V", "expected", "mV rms")));
        table.row(head);
        table.rule();
        for (OperatingPoint point : points) {
            Expected expected = session.findings().against().at(point);
            List<String> cells = new ArrayList<>(List.of(step(point)));
            for (String rail : rails) {
                Optional<RailPoint> at = point.rail(rail);
                cells.add(at.map(one -> fixed(one.current(), 3)).orElse(""));
                cells.add(at.map(one -> fixed(one.voltage(), 3)).orElse(""));
                cells.add(expected(expected, Expected.voltage(rail), 1));
                cells.add(at.flatMap(RailPoint::rippleRms)
                        .map(ripple -> fixed(ripple.scale(1000), 1))
                        .orElse(""));
            }
            table.row(cells);
        }
        lines.addAll(table.lines(1, WIDEST));
    }

    private void wound() {
        session.wound().ifPresent(report -> {
            lines.addAll(new WoundText(report).lines(WIDEST));
            lines.add("");
        });
    }

    private static String step(OperatingPoint point) {
        return point.stage() + " " + point.step() + (point.settled() ? "" : " *");
    }

    private static String expected(Expected expected, String what, double scale) {
        return expected.value(what)
                .map(value -> FigureRow.rounded(value.scale(scale)).toString())
                .orElse("");
    }

    /** What was required first; then what was found besides. */
    private void figures() {
        List<FigureRow> rows = FigureRow.judgedFirst(session.findings());
        table(rows.stream().filter(row -> row.verdict().isPresent()).toList(), "required");
        session.findings().verdicts().stream()
                .filter(v -> v.outcome() != Outcome.PASS && v.outcome() != Outcome.FAIL)
                .forEach(v ->
                        lines.add(v.outcome().words() + ": " + v.requirement().name() + " (" + v.reason() + ")"));
        if (!lines.get(lines.size() - 1).isEmpty()) {
            lines.add("");
        }
        table(rows.stream().filter(row -> row.verdict().isEmpty()).toList(), "also found");
    }

    private void table(List<FigureRow> rows, String title) {
        if (rows.isEmpty()) {
            return;
        }
        boolean judged = rows.get(0).verdict().isPresent();
        TextTable table = new TextTable();
        List<String> head = new ArrayList<>(List.of(title, "measured", "U 95 %", "unit", "expected", "differs"));
        head.addAll(judged ? List.of("limit", "verdict") : List.of());
        table.row(head);
        table.rule();
        for (FigureRow row : rows) {
            List<String> cells = new ArrayList<>(List.of(
                    row.label(),
                    row.valueText(),
                    row.expandedText(),
                    row.unit().word(),
                    row.expectedText(),
                    row.differsText()));
            cells.addAll(judged ? List.of(row.limitText(), row.verdictText()) : List.of());
            table.row(cells);
        }
        lines.addAll(table.lines(1, WIDEST));
        lines.add("");
    }

    /** Gathered by their reasons. */
    private void notFound() {
        Map<String, List<NotFound>> byReason = new LinkedHashMap<>();
        session.findings().notFound().forEach(missing -> byReason.computeIfAbsent(
                        missing.reason(), reason -> new ArrayList<>())
                .add(missing));
        byReason.forEach((reason, missing) -> lines.add("not found: " + names(missing) + ": " + reason));
        session.findings().impliedTurns().forEach((rail, turns) -> lines.add("turns, " + rail + ": " + turns.words()));
        lines.add("");
    }

    /** Each figure once, with the rails it is missing for where it is of rails. */
    private static String names(List<NotFound> missing) {
        Map<String, List<String>> rails = new LinkedHashMap<>();
        missing.forEach(one -> rails.computeIfAbsent(one.name().word(), name -> new ArrayList<>())
                .addAll(one.rail().stream().toList()));
        return rails.entrySet().stream()
                .map(entry -> entry.getKey()
                        + (entry.getValue().isEmpty() ? "" : " (" + String.join(", ", entry.getValue()) + ")"))
                .collect(Collectors.joining(", "));
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
            if (split.physical()) {
                lines.add(String.format(
                        Locale.ROOT,
                        "loss at %.3g A in all: fixed %s, with current %s, with its square %s",
                        amps,
                        watts(parts.get(0)),
                        watts(parts.get(1)),
                        watts(parts.get(2))));
            } else {
                lines.add("loss not split: one of its parts would come out below zero, which no part can take");
            }
            split.warning().ifPresent(lines::add);
        });
        session.findings().sagSplit().ifPresent(split -> {
            StringBuilder own = new StringBuilder();
            split.ownOhms()
                    .forEach((rail, ohms) ->
                            own.append(", ").append(rail).append("'s own ").append(ohms(ohms)));
            if (!isTold(split.sharedOhms(), split.ownOhms())) {
                lines.add("sag not split: the points hardly tell its parts apart, more unequal loads would");
                return;
            }
            lines.add(
                    split.physical()
                            ? "sag at held input: shared by the rails " + ohms(split.sharedOhms()) + own
                            : "sag not split: one of its resistances would come out below zero, which none can be");
            split.warning().ifPresent(lines::add);
        });
        lines.add("");
    }

    /** Whether what is known of the parts is not wider than all of them together. */
    private static boolean isTold(Estimate shared, Map<String, Estimate> own) {
        double together = Math.abs(shared.value())
                + own.values().stream()
                        .mapToDouble(one -> Math.abs(one.value()))
                        .sum();
        return shared.coverage(0.95).expanded() <= together;
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
                    "probable cause%s: %s (%d in 100, %s)",
                    cause.rail().map(rail -> ", " + rail + " rail").orElse("")
                            + cause.place().map(place -> ", " + place).orElse(""),
                    cause.text(),
                    Math.max(1, Math.min(99, Math.round(100 * cause.share()))),
                    cause.fit() < FITS ? "does not fit all readings" : "fits the readings"));
            cause.supports().forEach(reason -> lines.add("  for: " + reason));
            cause.against().forEach(reason -> lines.add("  against: " + reason));
            cause.checks().forEach(check -> lines.add("  check next: " + check));
            if (!cause.alike().isEmpty()) {
                lines.add("  these readings do not tell it from: "
                        + String.join(
                                "; or ",
                                cause.alike().stream().map(code -> code.text()).toList()));
            }
            lines.add("");
        }
    }

    private void coldResistances() {
        List<String> taken = session.events().stream()
                .filter(event -> event.is(EventKind.COLD_RESISTANCE))
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
                .filter(event -> event.is(EventKind.OFF))
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
        session.readInTurn().filter(ReadInTurn::any).ifPresent(read -> lines.add("readings: " + read.words()));
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

    private void notes(boolean wanted) {
        session.findings().verdicts().stream()
                .findFirst()
                .ifPresent(first -> lines.add("decision rule: " + first.rule().words()));
        List<FigureRow> rows = FigureRow.found(session.findings());
        if (rows.isEmpty()) {
            return;
        }
        lines.add("");
        if (wanted) {
            session.readInTurn().filter(read -> !read.any()).ifPresent(read -> lines.add("readings: " + read.words()));
            lines.add("What the figures are, where they hold, and what their u comes from (shares of its square):");
            lines.addAll(FigureNotes.of(rows));
        } else {
            lines.add("--notes adds what each figure means, where it holds and what its U comes from;"
                    + " --budget FIGURE, the whole of one.");
        }
    }

    private static String fixed(Estimate value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value.value());
    }
}
