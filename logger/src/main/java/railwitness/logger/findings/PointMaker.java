package railwitness.logger.findings;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import railwitness.analysis.supply.InputSource;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.PointBuilder;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.store.StepEntry;
import railwitness.logger.store.Trace;

/** Makes an operating point of what was read while a step was averaged. */
public final class PointMaker {
    private final Optional<BenchSheet> bench;
    private final ChannelEstimates estimates;
    private final Set<String> rails;

    /** @param rails names of the rails */
    PointMaker(Optional<BenchSheet> bench, ChannelEstimates estimates, List<String> rails) {
        this.bench = bench;
        this.estimates = estimates;
        this.rails = new LinkedHashSet<>(rails);
    }

    /** For a run that goes on: its instruments are known in that run alone. */
    public static PointMaker ofRun(BenchSheet bench, List<String> rails) {
        Optional<BenchSheet> known = Optional.of(bench);
        InstrumentNames names = new InstrumentNames("this run", List.of(), known);
        return new PointMaker(known, new ChannelEstimates(known, names, new BenchErrors()), rails);
    }

    /**
     * @param step measured
     * @param all the readings of its average, by channel
     * @return empty where the input was not read: then the step says nothing of the unit
     */
    public Optional<OperatingPoint> point(StepEntry step, SortedMap<Channel, Trace> all) {
        SortedMap<Channel, Trace> traces = new TreeMap<>(all);
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
