package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.points.RunContradictions;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.recording.store.Trace;

/**
 * Says during the run, as soon as a step stands, what cannot be: a person at the bench can put a lead right, hours later
 * nobody can. A finding never ends the run; what is dangerous is the interlock's business.
 */
final class StepWitness {
    private static final long LEAST_NANOS = 2_000_000_000L;

    /** Of a long hold only the last readings are kept. */
    private static final int MOST = 2_000;

    private final RunContradictions contradictions;
    private final Consumer<SessionEvent> happened;
    private final SortedMap<Channel, List<Measured>> readings = new TreeMap<>();
    private boolean looked;

    StepWitness(RunSetup setup, Consumer<SessionEvent> happened) {
        this.contradictions = new RunContradictions(setup.bench().sheet(), setup.design());
        this.happened = happened;
    }

    /** A step begins. */
    void begin() {
        readings.clear();
        looked = false;
    }

    void heard(Reading reading) {
        if (reading instanceof Measured measured) {
            List<Measured> mine = readings.computeIfAbsent(reading.channel(), channel -> new ArrayList<>());
            if (mine.size() == MOST) {
                mine.subList(0, MOST / 2).clear();
            }
            mine.add(measured);
        }
    }

    /** Once in each step, as soon as it stands. */
    void tick(StepRun step, long nowNanos) {
        boolean cycled = step.holding() && step.step().cycled(); // its set points are not the step's own
        if (!looked && !cycled) {
            step.soFar(nowNanos, LEAST_NANOS).ifPresent(entry -> {
                looked = true;
                look(entry, false);
            });
        }
    }

    void ended(StepEntry entry) {
        if (entry.outcome() == StepOutcome.MEASURED) {
            look(entry, true);
        }
    }

    private void look(StepEntry entry, boolean over) {
        SortedMap<Channel, Trace> traces = new TreeMap<>();
        TimeSpan span = entry.average().orElseThrow();
        readings.forEach((channel, all) -> traces.put(
                channel,
                trace(
                        channel,
                        all.stream()
                                .filter(one -> span.holds(one.repliedNanos()))
                                .toList())));
        for (Contradiction found : contradictions.look(entry, traces, over)) {
            happened.accept(new SessionEvent.Contradicted(found.text(), found.check()));
        }
    }

    private static Trace trace(Channel channel, List<Measured> all) {
        return new Trace(
                channel,
                all.stream().mapToDouble(Measured::value).toArray(),
                all.stream().mapToLong(Measured::requestedNanos).toArray(),
                all.stream().mapToLong(Measured::repliedNanos).toArray(),
                0,
                0);
    }
}
