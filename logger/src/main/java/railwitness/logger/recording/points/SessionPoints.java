package railwitness.logger.recording.points;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import railwitness.analysis.contradiction.Testimony;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.plan.TransformerTest;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.Trace;

/** The operating points of a session: the average of every channel over every measured step. */
public final class SessionPoints {
    private static final Set<String> NO_RAILS = Set.of("input", "supply");

    private final SessionFile file;
    private final ChannelEstimates estimates;
    private final PointMaker maker;

    /** Rails are those of the design sheet; all nodes with a voltage where there is none. */
    public SessionPoints(SessionFile file, Optional<BenchSheet> bench, Optional<Design> design, BenchErrors errors) {
        this.file = file;
        this.estimates =
                new ChannelEstimates(bench, new InstrumentNames(file.head().id(), file.instruments(), bench), errors);
        this.maker =
                new PointMaker(bench, estimates, design.map(PointMaker::nominal).orElseGet(this::readRails));
    }

    private Map<String, OptionalDouble> readRails() {
        Map<String, OptionalDouble> rails = new LinkedHashMap<>();
        file.channels().stream()
                .filter(channel -> channel.quantity() == Quantity.VOLTAGE
                        && !NO_RAILS.contains(channel.node())
                        && !SwitchedResistor.isLoad(channel.node()))
                .forEach(channel -> rails.put(channel.node(), OptionalDouble.empty()));
        return rails;
    }

    /** What the instruments may be off by, the same for all that is worked out here. */
    public ChannelEstimates estimates() {
        return estimates;
    }

    public List<Testimony> all() {
        Map<StepEntry, SortedMap<Channel, Trace>> read = new LinkedHashMap<>();
        for (StepEntry step : file.steps()) {
            if (step.outcome() == StepOutcome.MEASURED && !step.stage().equals(TransformerTest.WORD)) {
                read.put(step, file.traces(step.average().orElseThrow()));
            }
        }
        read.values().forEach(traces -> traces.values().forEach(estimates::seen));
        List<Testimony> points = new ArrayList<>();
        read.forEach((step, traces) -> maker.testimony(step, traces).ifPresent(points::add));
        return points;
    }
}
