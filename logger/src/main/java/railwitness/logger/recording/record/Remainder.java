package railwitness.logger.recording.record;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SheetEntry;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.recording.store.TimeSpan;

/**
 * What is left of an interrupted session's plan: the steps that were not averaged, and of a hold the time it was not held.
 *
 * @param file of the session
 * @param sheets as they were when it began
 * @param rehearsal whether it was recorded on the virtual bench
 * @param lastNanos time of its last record, ns
 * @param lastWall the wall clock then
 * @param done steps that have ended
 * @param gaps earlier ones, over which nothing was held
 */
public record Remainder(
        Path file,
        Sheets sheets,
        boolean rehearsal,
        long lastNanos,
        Instant lastWall,
        List<StepEntry> done,
        List<TimeSpan> gaps) {
    private static final Duration LEAST = Duration.ofSeconds(1);

    public Remainder {
        done = List.copyOf(done);
        gaps = List.copyOf(gaps);
    }

    /** Reads it from the session. */
    public static Remainder of(Path file) {
        try (SessionFile session = SessionFile.open(file)) {
            SheetEntry design = sheet(session, "design");
            SheetEntry bench = sheet(session, "bench");
            SheetEntry plan = sheet(session, "plan");
            long last = session.lastNanos();
            return new Remainder(
                    file,
                    new Sheets(
                            Sheets.design(design.fileName(), design.text()),
                            Sheets.bench(bench.fileName(), bench.text()),
                            Sheets.plan(plan.fileName(), plan.text())),
                    session.head().rehearsal(),
                    last,
                    session.wallOf(last),
                    session.steps(),
                    gaps(session));
        }
    }

    /** From the last reading before each time the session went on until then. */
    private static List<TimeSpan> gaps(SessionFile session) {
        List<TimeSpan> gaps = new ArrayList<>();
        for (EventEntry event : session.events()) {
            if (event.event() instanceof SessionEvent.Continued on) {
                gaps.add(new TimeSpan(Math.round(on.lastSeconds() * 1e9), event.nanos()));
            }
        }
        return gaps;
    }

    private long heldNanos(long from) {
        long held = lastNanos - from;
        for (TimeSpan gap : gaps) {
            held -= gap.fromNanos() >= from ? gap.toNanos() - gap.fromNanos() : 0;
        }
        return Math.max(0, held);
    }

    private static SheetEntry sheet(SessionFile session, String kind) {
        return session.sheet(kind)
                .orElseThrow(() -> new StoreException(
                        session.file() + " holds no " + kind + " sheet: no run that could go on was recorded in it"));
    }

    /** Where the session's axis stands at that time of the wall clock, ns; never before its last record. */
    public long nanosAt(Instant wall) {
        return lastNanos
                + Math.max(1_000_000_000L, Duration.between(lastWall, wall).toNanos());
    }

    SessionEvent gap(long nowNanos) {
        return new SessionEvent.Continued(lastNanos / 1e9, nowNanos / 1e9);
    }

    /** The steps still to be done, in their order. */
    List<Step> of(List<Step> all) {
        List<Step> left = new ArrayList<>();
        long heldFrom = 0;
        for (Step step : all) {
            Optional<StepEntry> entry = done.stream()
                    .filter(one -> one.stage().equals(step.stage())
                            && one.step().equals(step.name())
                            && one.outcome() == StepOutcome.MEASURED)
                    .findFirst();
            if (entry.isPresent()) {
                heldFrom = entry.get().average().orElseThrow().toNanos();
            } else if (left.isEmpty() && !step.hold().isZero() && heldFrom > 0) {
                left.add(step.heldFor(rest(step.hold().minusNanos(heldNanos(heldFrom)))));
            } else {
                left.add(step);
            }
        }
        return left;
    }

    private static Duration rest(Duration left) {
        return left.compareTo(LEAST) < 0 ? LEAST : left;
    }
}
