package railwitness.logger.campaign;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.supply.Figure;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.converter.FaultCode;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.rehearsal.SisterUnit;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * The same units on two benches: one hand-held meter, a clamp, resistors and a supply with knobs; and everything with a
 * serial line, with the same resistors. Prints for each fault how their findings agree. Arguments: how many units of each
 * fault, the first seed, and, where not all are wanted, words of faults. Ends with 1 when a figure differs by more than both uncertainties together.
 */
final class OneMeterCampaign {
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");
    private static final Path BENCHES = Path.of("sessions-sample", "benches");
    private static final double PROBABILITY = 0.95;

    /**
     * An uncertainty of 95 % is exceeded by one figure in twenty, and the figures of one unit share their meter's errors;
     * beyond one and a half times it (99.7 % of a normal distribution) something is wrong.
     */
    static final double FARTHEST = 1.5;

    /** A figure of both benches. */
    record Pair(String label, double one, double oneU, double full, double fullU) {
        /** Difference over the larger of both expanded uncertainties. */
        double overLarger() {
            return Math.abs(one - full) / Math.max(oneU, fullU);
        }

        /** Difference over the root of the sum of their squares, as proficiency tests do (ISO 13528). */
        double en() {
            return Math.abs(one - full) / Math.hypot(oneU, fullU);
        }
    }

    /** What both benches said of one unit. */
    record Compared(
            String fault, SessionState one, SessionState full, List<Pair> pairs, String oneCause, String fullCause) {
        long beyond() {
            return pairs.stream().filter(pair -> pair.overLarger() > 1).count();
        }

        double worst() {
            return pairs.stream().mapToDouble(Pair::overLarger).max().orElse(0);
        }

        boolean sameEnd() {
            return one == full;
        }
    }

    private record Found(SessionState end, List<Figure> figures, String cause) {}

    private OneMeterCampaign() {}

    public static void main(String... arguments) {
        int units = Integer.parseInt(arguments[0]);
        long seed = Long.parseLong(arguments[1]);
        List<Compared> all = new ArrayList<>();
        System.out.println(
                "| fault | units | ended alike | figures on both | beyond the larger U | worst, of the larger U |"
                        + " same first cause |\n|---|---|---|---|---|---|---|");
        List<String> wanted = List.of(arguments).subList(2, arguments.length);
        for (Optional<Fault> fault : faults()) {
            if (wanted.isEmpty() ? isEndless(fault) : !wanted.contains(word(fault))) {
                continue;
            }
            List<Compared> here = new ArrayList<>();
            for (int unit = 0; unit < units; unit++) {
                here.add(compared(fault, seed + unit, Sheets.demo().plan()));
            }
            System.out.println(row(here));
            here.stream()
                    .flatMap(one -> one.pairs().stream())
                    .filter(pair -> pair.overLarger() > 1)
                    .forEach(pair -> System.err.println(here.get(0).fault() + ": " + pair));
            here.stream()
                    .filter(one -> !one.oneCause().equals(one.fullCause()))
                    .forEach(one -> System.err.println(
                            one.fault() + ": one meter says " + one.oneCause() + ", full " + one.fullCause()));
            here.stream()
                    .filter(one -> !one.sameEnd())
                    .forEach(one ->
                            System.err.println(one.fault() + ": one meter " + one.one() + ", full " + one.full()));
            all.addAll(here);
        }
        System.out.println(row(all).replaceFirst("\\| [^|]* \\|", "| all |"));
        System.exit(all.stream().flatMap(one -> one.pairs().stream()).allMatch(pair -> pair.en() <= FARTHEST) ? 0 : 1);
    }

    /** A sound unit, then each fault at its usual place and size. */
    static List<Optional<Fault>> faults() {
        List<Optional<Fault>> all = new ArrayList<>();
        all.add(Optional.empty());
        for (FaultCode code : FaultCode.values()) {
            all.add(Optional.of(Fault.of(code.word())));
        }
        return all;
    }

    /**
     * A rail that shorts under load is worked out only where it is named: with knobs the short lasts until a person has read a
     * meter, and the virtual unit takes more than a quarter of an hour to work that out.
     */
    private static boolean isEndless(Optional<Fault> fault) {
        return fault.filter(one -> one.code() == FaultCode.SHORT_UNDER_LOAD).isPresent();
    }

    private static String word(Optional<Fault> fault) {
        return fault.map(code -> code.code().word()).orElse("none");
    }

    private static String row(List<Compared> all) {
        List<Pair> pairs = all.stream().flatMap(one -> one.pairs().stream()).toList();
        return String.format(
                Locale.ROOT,
                "| %s | %d | %d | %d | %d | %.2f | %d |",
                all.get(0).fault(),
                all.size(),
                all.stream().filter(Compared::sameEnd).count(),
                pairs.size(),
                pairs.stream().filter(pair -> pair.overLarger() > 1).count(),
                pairs.stream().mapToDouble(Pair::overLarger).max().orElse(0),
                all.stream()
                        .filter(one -> one.oneCause().equals(one.fullCause()))
                        .count());
    }

    static Compared compared(Optional<Fault> fault, long seed, SheetText<Plan> plan) {
        Found one = found("one-meter-and-knobs.toml", fault, seed, plan);
        Found full = found("resistor-bank.toml", fault, seed, plan);
        List<Pair> pairs = new ArrayList<>();
        for (Figure mine : one.figures()) {
            full.figures().stream()
                    .filter(other -> other.label().equals(mine.label()) && isSameMeasurand(mine, other))
                    .forEach(other -> pairs.add(pair(mine, other)));
        }
        return new Compared(word(fault), one.end(), full.end(), pairs, one.cause(), full.cause());
    }

    /** Ripple is of the band of the meter that reads it: in another band it is another quantity. */
    private static boolean isSameMeasurand(Figure mine, Figure other) {
        return !mine.label().startsWith("ripple") || mine.at().equals(other.at());
    }

    private static Pair pair(Figure one, Figure full) {
        return new Pair(
                one.label(),
                one.value().value(),
                one.value().coverage(PROBABILITY).expanded(),
                full.value().value(),
                full.value().coverage(PROBABILITY).expanded());
    }

    private static Found found(String bench, Optional<Fault> fault, long seed, SheetText<Plan> plan) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        Sheets sheets = new Sheets(
                Sheets.demo().design(),
                SheetText.of("bench", Sheet.of(folder().resolve(bench)), BenchSheet::from),
                plan);
        VirtualBench far = VirtualBench.of(
                SisterUnit.of(FixtureMaker.specimen(sheets), seed),
                fault.map(List::of).orElse(List.of()),
                sheets.bench().content(),
                seed,
                scheduler::nowNanos);
        LiveSession session = new LiveSession(
                sheets,
                scheduler,
                far.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                new RehearsalPerson(scheduler, far),
                new RunListener() {});
        try {
            Path file = Files.createTempDirectory("one-meter").resolve("unit.session");
            SessionState end = session.run(
                            file, new SessionHead("unit", START, ZoneOffset.UTC, true, "test", "", "unit", "", ""))
                    .state();
            var read = SessionFindings.of(file);
            var findings = read.findings();
            Files.delete(file);
            Files.delete(file.getParent());
            String cause = findings.against().causes().isEmpty()
                    ? "none"
                    : findings.against().causes().get(0).code().toString();
            if (Boolean.getBoolean("railwitness.causes")) {
                System.err.println(bench + " " + word(fault));
                read.events().stream()
                        .filter(event -> event.event().kind().isOutOfTheOrdinary())
                        .forEach(event ->
                                System.err.println("    " + event.event().words()));
                findings.against().causes().forEach(one -> System.err.println("    " + one));
            }
            return new Found(end, findings.figures(), cause);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Seen from the folder of all rooms, or from this one. */
    private static Path folder() {
        return Files.isDirectory(BENCHES) ? BENCHES : Path.of("..").resolve(BENCHES);
    }
}
