package railwitness.logger.recording.points;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.analysis.contradiction.Contradictions;
import railwitness.analysis.contradiction.Testimony;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.Trace;

/** Looks, while a run goes on, for readings that cannot all be true; each is told once. */
public final class RunContradictions {
    /** What an event is called in which readings that cannot all be true were told during the run. */
    private final Design design;

    private final Optional<BenchSheet> bench;
    private final PointMaker maker;
    private final List<Testimony> testimonies = new ArrayList<>();
    private final Set<String> told = new HashSet<>();

    public RunContradictions(BenchSheet bench, Design design) {
        this.design = design;
        this.bench = Optional.of(bench);
        this.maker = PointMaker.ofRun(bench, design);
    }

    /**
     * What the readings of a step so far give beside those of the steps before.
     *
     * @param over whether the step is over: then it is kept for the steps to come
     * @return those not told before
     */
    public List<Contradiction> look(StepEntry step, SortedMap<Channel, Trace> traces, boolean over) {
        Optional<Testimony> now = maker.testimony(step, traces);
        if (now.isEmpty()) {
            return List.of();
        }
        List<Testimony> all = new ArrayList<>(testimonies);
        all.add(now.get());
        if (over) {
            testimonies.add(now.get());
        }
        return Contradictions.of(Optional.of(design), Witness.all(all, bench)).stream()
                .filter(one -> told.add(one.code().word() + one.doubted()))
                .toList();
    }
}
