package railwitness.logger.record;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import railwitness.analysis.steady.Settling;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.logger.plan.Step;
import railwitness.logger.store.StepEntry;
import railwitness.logger.store.StepOutcome;
import railwitness.logger.store.TimeSpan;

/**
 * One step from set points to its average, as a state machine without clock or port. It settles by rule (every judged
 * channel has stopped drifting) with a time limit, is held where the plan says so, and is then averaged. A reading taken
 * while the supply limits or a load cannot hold never enters: settling starts again after it, and an average it falls
 * into is given up. A step that lets the unit drop out is the exception: a load cannot hold on rails that have given up,
 * and that they have is the measurement.
 */
final class StepRun {
    /** How long limiting may last before the step counts as out of reach; charging capacitors takes less. */
    private static final long PATIENCE_NANOS = 3_000_000_000L;

    private enum Part {
        SETTING,
        SETTLING,
        HOLDING,
        AVERAGING,
        ENDED
    }

    private final Step step;
    private final Map<Channel, Settling> settlings = new TreeMap<>();
    private final Set<Channel> judged;
    private final long begunNanos;
    private Part part = Part.SETTING;
    private long partSinceNanos;
    private long limitingSinceNanos = -1;
    private final Map<String, String> limiting = new LinkedHashMap<>();
    private boolean held;
    private long inPlaceNanos;
    private boolean settled;
    private boolean waiting;
    private StepEntry entry;

    /** @param judged channels that must stop drifting */
    StepRun(Step step, Set<Channel> judged, long nowNanos) {
        this.step = step;
        this.judged = judged;
        this.begunNanos = nowNanos;
    }

    Step step() {
        return step;
    }

    /** The entry once the step has ended. */
    Optional<StepEntry> entry() {
        return Optional.ofNullable(entry);
    }

    boolean averaging() {
        return part == Part.AVERAGING;
    }

    boolean settled() {
        return settled;
    }

    /** The set points are in place. */
    void inPlace(long nowNanos) {
        inPlaceNanos = nowNanos;
        enter(Part.SETTLING, nowNanos);
    }

    /** Whether the set points stand. */
    boolean inPlace() {
        return part != Part.SETTING;
    }

    /** Since when they do. */
    long inPlaceNanos() {
        return inPlaceNanos;
    }

    void heard(Reading reading) {
        if (part == Part.SETTLING
                && judged.contains(reading.channel())
                && reading.requestedNanos() >= partSinceNanos
                && reading instanceof Measured measured) {
            settlings
                    .computeIfAbsent(reading.channel(), channel -> new Settling(RunSetup.settlingRule()))
                    .add(seconds(measured.repliedNanos() - begunNanos), measured.value());
        }
    }

    /** What state an instrument was in when it was last asked; of several that limit, each ends its own limiting only. */
    void conditions(String instrument, Set<Condition> conditions, long nowNanos) {
        boolean limits = conditions.contains(Condition.LIMITING)
                || (conditions.contains(Condition.NOT_HOLDING) && !step.mayGiveUp());
        if (part == Part.ENDED || part == Part.SETTING) {
            return;
        }
        if (!limits) {
            limiting.remove(instrument);
            limitingSinceNanos = limiting.isEmpty() ? -1 : limitingSinceNanos;
            return;
        }
        if (limitingSinceNanos < 0) {
            limitingSinceNanos = nowNanos;
        }
        limiting.put(
                instrument,
                conditions.contains(Condition.LIMITING) ? " limits its current" : " cannot hold its set point");
        settlings.clear();
        if (part != Part.SETTLING || nowNanos - limitingSinceNanos > PATIENCE_NANOS) {
            end(StepOutcome.NOT_REACHED, limitingWords(), Optional.empty());
        }
    }

    private String limitingWords() {
        return limiting.entrySet().stream()
                .map(one -> one.getKey() + one.getValue())
                .collect(Collectors.joining(", "));
    }

    /** What is read cannot be of what was set: it settles anew, and what was averaged of it is given up. */
    void doubted(long nowNanos) {
        settlings.clear();
        if (part == Part.AVERAGING || part == Part.SETTLING) {
            enter(Part.SETTLING, nowNanos);
        }
    }

    /** While a person still reads a meter, an average does not end. */
    void waitForPerson(boolean yes) {
        waiting = yes;
    }

    void tick(long nowNanos) {
        if (part == Part.SETTLING) {
            settle(nowNanos);
        } else if (part == Part.HOLDING
                && nowNanos - partSinceNanos >= step.hold().toNanos()) {
            held = true;
            enter(Part.AVERAGING, nowNanos);
        } else if (part == Part.AVERAGING
                && !waiting
                && nowNanos - partSinceNanos >= step.timing().average().toNanos()) {
            end(StepOutcome.MEASURED, "", Optional.of(new TimeSpan(partSinceNanos, nowNanos + 1)));
        }
    }

    private void settle(long nowNanos) {
        boolean still = settlings.keySet().containsAll(judged)
                && settlings.values().stream().allMatch(Settling::settled);
        boolean late = nowNanos - partSinceNanos >= step.timing().settleAtMost().toNanos();
        if (limitingSinceNanos >= 0 && late) {
            end(StepOutcome.NOT_REACHED, limitingWords(), Optional.empty());
        } else if (limitingSinceNanos < 0 && (still || late)) {
            settled = still;
            enter(step.hold().isZero() || held ? Part.AVERAGING : Part.HOLDING, nowNanos);
        }
    }

    /** Ends the step now, without an average. */
    void giveUp(StepOutcome outcome, String reason) {
        if (part != Part.ENDED) {
            end(outcome, reason, Optional.empty());
        }
    }

    private void enter(Part next, long nowNanos) {
        part = next;
        partSinceNanos = nowNanos;
    }

    private void end(StepOutcome outcome, String reason, Optional<TimeSpan> average) {
        part = Part.ENDED;
        entry = new StepEntry(
                step.stage(),
                step.name(),
                begunNanos,
                average,
                settled,
                outcome,
                reason,
                OptionalDouble.of(step.inputVolts()),
                new TreeMap<>(step.loadAmps()));
    }

    private static double seconds(long nanos) {
        return nanos / 1e9;
    }
}
