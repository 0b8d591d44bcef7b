package railwitness.logger.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.store.SessionFile;
import railwitness.logger.store.StepEntry;
import railwitness.logger.store.StepOutcome;

/** The operating points of a session: the average of every channel over every measured step. */
final class SessionPoints {
    private static final Set<String> NO_RAILS = Set.of("input", "supply");

    private final SessionFile file;
    private final PointMaker maker;

    /** @param rails names of the rails by the design sheet; all nodes with a voltage where there is none */
    SessionPoints(SessionFile file, Optional<BenchSheet> bench, List<String> rails, BenchErrors errors) {
        this.file = file;
        this.maker = new PointMaker(
                bench,
                new ChannelEstimates(bench, new InstrumentNames(file.head().id(), file.instruments(), bench), errors),
                rails.isEmpty() ? readRails() : rails);
    }

    private List<String> readRails() {
        return file.channels().stream()
                .filter(channel -> channel.quantity() == Quantity.VOLTAGE && !NO_RAILS.contains(channel.node()))
                .map(Channel::node)
                .toList();
    }

    List<OperatingPoint> all() {
        List<OperatingPoint> points = new ArrayList<>();
        for (StepEntry step : file.steps()) {
            if (step.outcome() == StepOutcome.MEASURED) {
                maker.point(step, file.traces(step.average().orElseThrow())).ifPresent(points::add);
            }
        }
        return points;
    }
}
