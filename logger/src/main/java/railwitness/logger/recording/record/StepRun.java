package railwitness.logger.recording.record;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import railwitness.analysis.steady.Settling;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;

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

    /** A channel that is not read at all holds no step up for longer; whether it may be silent is the interlock's. */
    private static final long READ_NANOS = 5_000_000_000L;

    /** Where no instrument shows that it stands still, it is given so long; whoever reads sees that it stands. */
    private static final long UNSEEN_NANOS = 5_000_000_000L;

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
    private final Set<Channel> needed;
    private final Set<Channel> fresh = new TreeSet<>();
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
    private double setVolts;

    /**
     * @param judged channels that must stop drifting
     * @param needed channels of which an average needs a reading, and of which one must have been asked for since the
     *     set points stand: what was asked for before and is answered late is of the step before
     */
    StepRun(Step step, Set<Channel> judged, Set<Channel> needed, long nowNanos) {
        this.step = step;
        this.judged = judged;
        this.needed = needed;
        this.begunNanos = nowNanos;
        this.setVolts = step.inputVolts();
    }

    /** What the supply is set to, V, where that is not what the step asks for at the terminals. */
    void setTo(double volts) {
        setVolts = volts;
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

    /** The step as it would be, averaged over the part it is in: what is held or averaged for that long at least. */
    Optional<StepEntry> soFar(long nowNanos, long leastNanos) {
        boolean stands = part == Part.HOLDING || part == Part.AVERAGING;
        return stands && nowNanos - partSinceNanos >= leastNanos
                ? Optional.of(entry(StepOutcome.MEASURED, "", Optional.of(new TimeSpan(partSinceNanos, nowNanos + 1))))
                : Optional.empty();
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
        if (part != Part.SETTING
                && reading instanceof Measured
                && reading.requestedNanos() >= (part == Part.AVERAGING ? partSinceNanos : inPlaceNanos)) {
            fresh.add(reading.channel());
        }
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

    boolean waitingForPerson() {
        return waiting;
    }

    void tick(long nowNanos) {
        if (part == Part.SETTLING) {
            settle(nowNanos);
        } else if (part == Part.HOLDING
                && step.holding().isEmpty()
                && nowNanos - partSinceNanos >= step.hold().toNanos()) {
            held = true;
            enter(Part.AVERAGING, nowNanos);
        } else if (part == Part.AVERAGING
                && !waiting
                && nowNanos - partSinceNanos >= step.timing().average().toNanos()
                && read(nowNanos - partSinceNanos - step.timing().average().toNanos())) {
            end(StepOutcome.MEASURED, "", Optional.of(new TimeSpan(partSinceNanos, nowNanos + 1)));
        }
    }

    /** Whether it is held; until when, whoever holds it knows. */
    boolean holding() {
        return part == Part.HOLDING;
    }

    /** The hold is over: after a cycle it settles once more, else it is averaged at once. */
    void heldEnough(long nowNanos) {
        if (part == Part.HOLDING) {
            held = true;
            settlings.clear();
            enter(step.cycled() ? Part.SETTLING : Part.AVERAGING, nowNanos);
        }
    }

    /** Every needed channel has been read, or has had its time. */
    private boolean read(long waitedNanos) {
        return fresh.containsAll(needed) || waitedNanos >= READ_NANOS;
    }

    private void settle(long nowNanos) {
        boolean seen = !judged.isEmpty() || nowNanos - partSinceNanos >= UNSEEN_NANOS;
        boolean still = seen
                && settlings.keySet().containsAll(judged)
                && settlings.values().stream().allMatch(Settling::settled);
        boolean late = nowNanos - partSinceNanos >= step.timing().settleAtMost().toNanos();
        if (limitingSinceNanos >= 0 && late) {
            end(StepOutcome.NOT_REACHED, limitingWords(), Optional.empty());
        } else if (limitingSinceNanos < 0
                && (still || late)
                && read(nowNanos
                        - Math.max(inPlaceNanos + step.timing().settleAtMost().toNanos(), partSinceNanos))) {
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
        if (next == Part.AVERAGING) {
            fresh.clear();
        }
        part = next;
        partSinceNanos = nowNanos;
    }

    private void end(StepOutcome outcome, String reason, Optional<TimeSpan> average) {
        part = Part.ENDED;
        entry = entry(outcome, reason, average);
    }

    private StepEntry entry(StepOutcome outcome, String reason, Optional<TimeSpan> average) {
        return new StepEntry(
                step.stage(),
                step.name(),
                begunNanos,
                average,
                settled,
                outcome,
                reason,
                OptionalDouble.of(setVolts),
                new TreeMap<>(step.loadAmps()));
    }

    private static double seconds(long nanos) {
        return nanos / 1e9;
    }
}
