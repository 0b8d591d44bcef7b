package railwitness.logger.findings;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.cause.Ending;
import railwitness.analysis.design.Band;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.analysis.findings.Circumstances;
import railwitness.analysis.findings.Findings;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RippleMeans;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.sheet.DesignReader;
import railwitness.logger.store.EventEntry;
import railwitness.logger.store.SessionFile;
import railwitness.logger.store.SessionHead;
import railwitness.logger.store.SessionState;
import railwitness.logger.store.SheetEntry;
import railwitness.logger.store.StepEntry;

/**
 * A session and everything worked out from it. Nothing here is kept in the file: the same file gives the same findings.
 *
 * @param ended wall-clock time of the last record, ns since the session's start
 * @param design the sheet as it was when the session was recorded; empty for an import without one
 */
public record SessionFindings(
        SessionHead head,
        SessionState state,
        long endedNanos,
        Optional<Design> design,
        Optional<BenchSheet> bench,
        List<StepEntry> steps,
        List<EventEntry> events,
        Findings findings) {

    /** Opens the file, works out, closes it. */
    public static SessionFindings of(Path session) {
        try (SessionFile file = SessionFile.open(session)) {
            return of(file);
        }
    }

    public static SessionFindings of(SessionFile file) {
        Optional<Design> design = file.sheet("design").map(SessionFindings::design);
        Optional<BenchSheet> bench = file.sheet("bench").map(SessionFindings::bench);
        List<String> rails = design.map(
                        sheet -> sheet.rails().stream().map(Rail::name).toList())
                .orElse(List.of());
        List<OperatingPoint> points = new SessionPoints(file, bench, rails).all();
        List<EventEntry> events = file.events();
        Circumstances circumstances = new Circumstances(
                new RippleMeans(bands(bench), Map.of()),
                bench.isPresent() ? OptionalDouble.of(bench.get().leadResistanceOhms()) : OptionalDouble.empty(),
                ending(file, events));
        return new SessionFindings(
                file.head(),
                file.state(),
                file.lastNanos(),
                design,
                bench,
                file.steps(),
                events,
                Findings.of(points, design, circumstances));
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
                .filter(instrument -> instrument.bandHz().size() == 2)
                .forEach(instrument -> instrument.reads().stream()
                        .filter(channel -> channel.quantity() == Quantity.RIPPLE)
                        .forEach(channel -> bands.put(
                                channel.node(),
                                new Band(
                                        instrument.bandHz().get(0),
                                        instrument.bandHz().get(1))))));
        return bands;
    }

    /** A run that ended while the unit was powered for the first time says something by that alone. */
    private static Optional<Ending> ending(SessionFile file, List<EventEntry> events) {
        return events.stream()
                .filter(event -> event.what().equals("first power"))
                .findFirst()
                .flatMap(event -> FirstPowerEnding.of(event, lastInputAmps(file)));
    }

    private static OptionalDouble lastInputAmps(SessionFile file) {
        Channel input = new Channel("input", Quantity.CURRENT);
        Channel channel = file.channels().contains(input) ? input : new Channel("supply", Quantity.CURRENT);
        double[] highest = {Double.NEGATIVE_INFINITY};
        file.readings(channel, railwitness.logger.store.TimeSpan.ALL, reading -> {
            if (reading instanceof railwitness.drivers.reading.Measured measured) {
                highest[0] = Math.max(highest[0], measured.value());
            }
        });
        return Double.isFinite(highest[0]) ? OptionalDouble.of(highest[0]) : OptionalDouble.empty();
    }
}
