package railwitness.logger.findings;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import railwitness.analysis.supply.InputSource;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.PointBuilder;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.store.SessionFile;
import railwitness.logger.store.StepEntry;
import railwitness.logger.store.StepOutcome;
import railwitness.logger.store.Trace;

/** The operating points of a session: the average of every channel over every measured step. */
final class SessionPoints {
    private static final Set<String> NO_RAILS = Set.of("input", "supply");

    private final SessionFile file;
    private final Optional<BenchSheet> bench;
    private final ChannelEstimates estimates;
    private final Set<String> rails;

    /** @param rails names of the rails by the design sheet; all nodes with a voltage where there is none */
    SessionPoints(SessionFile file, Optional<BenchSheet> bench, List<String> rails, BenchErrors errors) {
        this.file = file;
        this.bench = bench;
        this.estimates =
                new ChannelEstimates(bench, new InstrumentNames(file.head().id(), file.instruments(), bench), errors);
        this.rails = new LinkedHashSet<>(rails.isEmpty() ? readRails() : rails);
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
                point(step).ifPresent(points::add);
            }
        }
        return points;
    }

    /** Empty where the input was not read: then the step says nothing of the unit. */
    private Optional<OperatingPoint> point(StepEntry step) {
        SortedMap<Channel, Trace> traces = file.traces(step.average().orElseThrow());
        traces.values().removeIf(trace -> trace.count() == 0);
        String where = step.stage() + " " + step.step();
        PointBuilder builder = OperatingPoint.of(step.stage(), step.step())
                .during(
                        step.average().get().fromNanos() / 1e9,
                        step.average().get().toNanos() / 1e9)
                .settled(step.settled())
                .count(traces.values().stream().mapToInt(Trace::count).min().orElse(1));
        step.inputVolts().ifPresent(builder::setVolts);
        if (!input(builder, traces, where)) {
            return Optional.empty();
        }
        rails.forEach(rail -> rail(builder, traces, rail, step, where));
        traces.forEach((channel, trace) -> {
            if (channel.quantity() == Quantity.TEMPERATURE) {
                builder.temperature(channel.node(), estimates.mean(trace, where));
            }
        });
        return Optional.of(builder.build());
    }

    private boolean input(PointBuilder builder, Map<Channel, Trace> traces, String where) {
        Trace volts = traces.get(new Channel("input", Quantity.VOLTAGE));
        Trace supplyVolts = traces.get(new Channel("supply", Quantity.VOLTAGE));
        Trace amps = traces.getOrDefault(
                new Channel("input", Quantity.CURRENT), traces.get(new Channel("supply", Quantity.CURRENT)));
        if (amps == null || (volts == null && supplyVolts == null)) {
            return false;
        }
        builder.inputCurrent(estimates.mean(amps, where));
        if (volts != null) {
            builder.inputVoltage(estimates.mean(volts, where), InputSource.TERMINALS);
        } else {
            builder.inputVoltage(estimates.mean(supplyVolts, where), InputSource.SUPPLY_READ_BACK);
        }
        return true;
    }

    private void rail(PointBuilder builder, Map<Channel, Trace> traces, String rail, StepEntry step, String where) {
        Trace volts = traces.get(new Channel(rail, Quantity.VOLTAGE));
        if (volts == null) {
            return;
        }
        Estimate voltage = estimates.mean(volts, where);
        builder.railVoltage(rail, voltage);
        Trace amps = traces.get(new Channel(rail, Quantity.CURRENT));
        double wanted = step.loadAmps().getOrDefault(rail, 0.0);
        if (amps != null && (wanted > 0 || step.loadAmps().isEmpty())) {
            builder.railCurrent(rail, estimates.mean(amps, where));
        } else if (wanted > 0) {
            fromResistor(rail, voltage, wanted).ifPresent(current -> builder.railCurrent(rail, current));
        }
        Trace ripple = traces.get(new Channel(rail, Quantity.RIPPLE));
        if (ripple != null) {
            builder.ripple(rail, estimates.mean(ripple, where));
        }
    }

    /** The resistor of the bank that comes nearest to the wanted current at this voltage. */
    private Optional<Estimate> fromResistor(String rail, Estimate voltage, double wanted) {
        return bench.flatMap(sheet -> sheet.bank(rail)).map(bank -> {
            double ohms = bank.nearest(Math.abs(voltage.value()) / wanted);
            return voltage.abs().over(estimates.resistor(rail, ohms, bank.tolerancePct()));
        });
    }
}
