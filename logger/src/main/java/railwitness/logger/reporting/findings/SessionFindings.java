package railwitness.logger.reporting.findings;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.analysis.contradiction.Testimony;
import railwitness.analysis.contradiction.Witnesses;
import railwitness.analysis.design.Band;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Rail;
import railwitness.analysis.findings.CausesWanted;
import railwitness.analysis.findings.Circumstances;
import railwitness.analysis.findings.Findings;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RippleMeans;
import railwitness.analysis.supply.RippleWaveform;
import railwitness.analysis.transformer.Idle;
import railwitness.analysis.transformer.WoundAsMeant;
import railwitness.analysis.transformer.WoundDesign;
import railwitness.analysis.transformer.WoundReport;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.plan.TransformerTest;
import railwitness.logger.recording.points.BenchErrors;
import railwitness.logger.recording.points.SessionPoints;
import railwitness.logger.recording.points.SessionWinding;
import railwitness.logger.recording.points.Witness;
import railwitness.logger.recording.sheet.DesignReader;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.ChainState;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SheetEntry;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.VirtualBenchHead;

/**
 * A session and everything worked out from it. Nothing here is kept in the file: the same file gives the same findings.
 *
 * @param ended wall-clock time of the last record, ns since the session's start
 * @param waveforms by rail, where a scope looked or a trace was imported
 * @param design the sheet as it was when the session was recorded; empty for an import without one
 * @param findings of a session that is not as it was recorded nothing is judged
 * @param wound the transformer by itself, where it was measured
 * @param chain whether it is as it was recorded
 */
public record SessionFindings(
        SessionHead head,
        SessionState state,
        long endedNanos,
        Optional<Design> design,
        Optional<BenchSheet> bench,
        List<StepEntry> steps,
        List<EventEntry> events,
        Map<String, RippleWaveform> waveforms,
        Findings findings,
        Optional<WoundReport> wound,
        ChainState chain) {

    /** The events that a person should hear of: what ended, hindered or endangered the session, in their order. */
    public List<EventEntry> outOfTheOrdinary() {
        return events.stream()
                .filter(event -> event.event().kind().isOutOfTheOrdinary())
                .toList();
    }

    /** Whether the record was altered after it was written. */
    public boolean brokenChain() {
        return chain.isBroken();
    }

    /** Opens the file, works out, closes it. */
    public static SessionFindings of(Path session) {
        return of(session, false);
    }

    /**
     * The same.
     *
     * @param whole work the chain out too, however long it takes
     */
    public static SessionFindings of(Path session, boolean whole) {
        try (SessionFile file = SessionFile.open(session)) {
            return of(file, new BenchErrors(), ChainState.of(session, whole));
        }
    }

    /** Which readings were taken together and which in turn; empty without a bench sheet, or where no point was read. */
    public Optional<ReadInTurn> readInTurn() {
        return findings.points().isEmpty() ? Optional.empty() : bench.map(ReadInTurn::of);
    }

    public static SessionFindings of(SessionFile file) {
        return of(file, ChainState.of(file.file(), false));
    }

    /**
     * The same of a session whose chain was looked at before.
     *
     * @param chain what was found then
     */
    public static SessionFindings of(SessionFile file, ChainState chain) {
        return of(file, new BenchErrors(), chain);
    }

    /**
     * Opens the file, works out what is held against other sessions, closes it. Causes are left out where they would say
     * nothing that readings do not show.
     *
     * @param errors what is wrong with the bench, shared with the other sessions
     * @param chain of the session, looked at before
     */
    public static SessionFindings compared(Path session, BenchErrors errors, ChainState chain) {
        try (SessionFile file = SessionFile.open(session)) {
            return of(file, errors, chain, CausesWanted.WHERE_NOTHING_DEVIATES);
        }
    }

    /** As {@link #of(SessionFile)}, but without causes, which take longest: for who wants the verdict. */
    public static SessionFindings judged(SessionFile file) {
        return of(file, new BenchErrors(), ChainState.of(file.file(), false), CausesWanted.NEVER);
    }

    private static SessionFindings of(SessionFile file, BenchErrors errors, ChainState chain) {
        return of(file, errors, chain, CausesWanted.ALWAYS);
    }

    /** What makes no sense in a session that was altered is told as that, not as a mistake of anybody's. */
    private static SessionFindings of(SessionFile file, BenchErrors errors, ChainState chain, CausesWanted causes) {
        try {
            return workedOut(file, errors, chain, chain.isBroken() ? CausesWanted.NEVER : causes);
        } catch (RuntimeException e) {
            chain.refuseBroken(file.file());
            throw e;
        }
    }

    /** A session that tripped is never fit, one that was altered never judged. */
    private static Findings judged(Findings found, SessionState state, ChainState chain) {
        Findings honest = state == SessionState.TRIPPED ? found.neverFit() : found;
        return chain.isBroken() ? honest.contradicted(Contradiction.brokenChain(chain.words())) : honest;
    }

    private static SessionFindings workedOut(
            SessionFile file, BenchErrors errors, ChainState chain, CausesWanted causes) {
        Optional<Design> design = file.sheet("design").map(SessionFindings::design);
        Optional<BenchSheet> bench = file.sheet("bench").map(SessionFindings::bench);
        List<String> rails = design.map(
                        sheet -> sheet.rails().stream().map(Rail::name).toList())
                .orElse(List.of());
        SessionPoints maker = new SessionPoints(file, bench, design, errors);
        List<Testimony> testimonies = maker.all();
        List<OperatingPoint> points = testimonies.stream().map(Testimony::point).toList();
        List<EventEntry> events = file.events();
        SessionWaveforms waveforms = new SessionWaveforms(file.waveforms(), events, design, bench);
        RippleMeans ripple =
                new RippleMeans(bands(bench), waveforms.ripple(), waveforms.drainPeak(), waveforms.drive());
        Circumstances circumstances = new Circumstances(
                ripple,
                bench.isPresent() ? OptionalDouble.of(bench.get().leadResistanceOhms()) : OptionalDouble.empty(),
                causes == CausesWanted.NEVER ? Optional.empty() : ending(file, events, design),
                new SoakReader(file, bench, design, maker.estimates()).record(points),
                wound(file, bench, points, errors));
        Witnesses witnesses = Witness.all(testimonies, bench);
        Findings found = Findings.of(points, design, circumstances, witnesses, causes);
        SessionState state = file.state();
        return new SessionFindings(
                VirtualBenchHead.of(file),
                state,
                file.lastNanos(),
                design,
                bench,
                file.steps(),
                events,
                ripple.waveforms(),
                judged(found, state, chain),
                circumstances.wound(),
                chain);
    }

    /** The transformer by itself, where it was measured so. */
    private static Optional<WoundReport> wound(
            SessionFile file, Optional<BenchSheet> bench, List<OperatingPoint> points, BenchErrors errors) {
        Optional<WoundDesign> design = file.sheet("design")
                .map(sheet -> Sheet.of(sheet.fileName(), sheet.text()).read(DesignReader::wound));
        Optional<TransformerTest> test = file.sheet("plan")
                .flatMap(sheet ->
                        Sheets.plan(sheet.fileName(), sheet.text()).content().transformer());
        OptionalDouble hertz =
                design.map(sheet -> sheet.design().converter().frequencyHz()).orElse(OptionalDouble.empty());
        return SessionWinding.of(file, bench, test, hertz, errors)
                .map(read -> WoundReport.of(
                        design.flatMap(WoundAsMeant::of), read, Idle.of(points, design.map(WoundDesign::design))));
    }

    /**
     * The figures of that name: of one rail, or of all where none is named.
     *
     * @param word as {@code docs/findings.md} lists them
     * @param rail empty for all
     * @throws IllegalArgumentException naming the figures or rails there are
     */
    public List<Figure> figures(String word, Optional<String> rail) {
        FigureName name = FigureName.of(word);
        List<Figure> named = findings.figures().stream()
                .filter(figure -> figure.name() == name)
                .toList();
        if (named.isEmpty()) {
            throw new IllegalArgumentException("figure '" + word + "' was not found in this session: "
                    + findings.notFound().stream()
                            .filter(missing -> missing.name() == name)
                            .map(NotFound::reason)
                            .distinct()
                            .collect(Collectors.joining("; "))
                    + "; found are: "
                    + labels(findings.figures(), found -> found.name().word()));
        }
        List<Figure> chosen = named.stream()
                .filter(figure -> rail.isEmpty() || figure.rail().equals(rail))
                .toList();
        if (chosen.isEmpty()) {
            throw new IllegalArgumentException("figure '" + word + "' has no rail '" + rail.orElse("") + "'; "
                    + (name.perRail()
                            ? "it was found for: "
                                    + labels(named, found -> found.rail().orElse(""))
                            : "it is not of one rail"));
        }
        return chosen;
    }

    /** From a step's set points to the begin of its average, s: settling, and the hold where the plan has one. */
    public OptionalDouble waitedSeconds(OperatingPoint point) {
        return steps.stream()
                .filter(step ->
                        step.stage().equals(point.stage()) && step.step().equals(point.step()))
                .flatMapToDouble(step -> step.average().stream()
                        .filter(average -> average.fromNanos() / 1e9 == point.fromSeconds())
                        .mapToDouble(average -> (average.fromNanos() - step.beginNanos()) / 1e9))
                .findFirst();
    }

    private static String labels(List<Figure> figures, Function<Figure, String> label) {
        return figures.stream().map(label).distinct().collect(Collectors.joining(", "));
    }

    private static Design design(SheetEntry sheet) {
        return Sheet.of(sheet.fileName(), sheet.text()).read(DesignReader::design);
    }

    private static BenchSheet bench(SheetEntry sheet) {
        return Sheet.of(sheet.fileName(), sheet.text()).read(BenchSheet::from);
    }

    private static Map<String, Band> bands(Optional<BenchSheet> bench) {
        Map<String, Band> bands = new HashMap<>();
        bench.ifPresent(sheet -> sheet.instruments().stream()
                .filter(instrument ->
                        !instrument.isScope() && instrument.bandHz().size() == 2)
                .forEach(instrument -> instrument.reads().stream()
                        .filter(channel -> channel.quantity() == Quantity.RIPPLE)
                        .forEach(channel -> bands.put(
                                channel.node(),
                                new Band(
                                        instrument.bandHz().get(0),
                                        instrument.bandHz().get(1))))));
        bench.ifPresent(sheet -> sheet.handRead().stream()
                .filter(meter -> meter.reads().quantity() == Quantity.RIPPLE
                        && meter.bandHz().size() == 2)
                .forEach(meter -> bands.put(
                        meter.reads().node(),
                        new Band(meter.bandHz().get(0), meter.bandHz().get(1)))));
        return bands;
    }

    /** A run that ended while the unit was powered for the first time says something by that alone. */
    private static Optional<EarlyEnding> ending(SessionFile file, List<EventEntry> events, Optional<Design> design) {
        List<String> rails = design.stream()
                .flatMap(sheet -> sheet.rails().stream())
                .map(Rail::name)
                .toList();
        OptionalDouble standby =
                design.map(sheet -> sheet.limits().standbyAmperes()).orElse(OptionalDouble.empty());
        return events.stream()
                .filter(event -> event.is(EventKind.FIRST_POWER))
                .findFirst()
                .flatMap(event ->
                        FirstPowerEnding.of(event, lastInputAmps(file), railsRead(file, rails), standbyMeasured(file)))
                .or(() -> events.stream()
                        .filter(event -> event.is(EventKind.TRIP))
                        .findFirst()
                        .flatMap(trip -> HighRailEnding.of(trip, rails, file.steps(), () -> lastInputAmps(file))
                                .or(() -> FallenRailEnding.of(trip, rails, file.steps()))
                                .or(() -> StandbyTripEnding.of(trip, standby))
                                .or(() -> LossEnding.of(
                                        trip,
                                        file.steps(),
                                        () -> lastRailVolts(file, rails),
                                        () -> lastInputAmps(file)))));
    }

    private static boolean standbyMeasured(SessionFile file) {
        return file.steps().stream()
                .anyMatch(step -> step.stage().equals("standby") && step.outcome() == StepOutcome.MEASURED);
    }

    private static Map<String, Double> lastRailVolts(SessionFile file, List<String> rails) {
        Map<String, Double> volts = new LinkedHashMap<>();
        for (String rail : rails) {
            file.readings(
                    new Channel(rail, Quantity.VOLTAGE), railwitness.logger.recording.store.TimeSpan.ALL, reading -> {
                        if (reading instanceof railwitness.drivers.reading.Measured measured) {
                            volts.put(rail, measured.value());
                        }
                    });
        }
        return volts;
    }

    private static int railsRead(SessionFile file, List<String> rails) {
        return (int) file.channels().stream()
                .filter(channel -> channel.quantity() == Quantity.VOLTAGE && rails.contains(channel.node()))
                .count();
    }

    private static OptionalDouble lastInputAmps(SessionFile file) {
        Channel input = new Channel("input", Quantity.CURRENT);
        Channel channel = file.channels().contains(input) ? input : new Channel("supply", Quantity.CURRENT);
        double[] highest = {Double.NEGATIVE_INFINITY};
        file.readings(channel, railwitness.logger.recording.store.TimeSpan.ALL, reading -> {
            if (reading instanceof railwitness.drivers.reading.Measured measured) {
                highest[0] = Math.max(highest[0], measured.value());
            }
        });
        return Double.isFinite(highest[0]) ? OptionalDouble.of(highest[0]) : OptionalDouble.empty();
    }
}
