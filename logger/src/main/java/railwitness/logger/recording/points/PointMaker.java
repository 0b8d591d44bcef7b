package railwitness.logger.recording.points;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import railwitness.analysis.contradiction.Testimony;
import railwitness.analysis.design.Design;
import railwitness.analysis.supply.InputSource;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.PointBuilder;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.Trace;

/** Makes an operating point of what was read while a step was averaged. */
public final class PointMaker {
    private final Optional<BenchSheet> bench;
    private final ChannelEstimates estimates;
    private final Map<String, OptionalDouble> rails;

    /** @param rails nominal voltages of the rails by their names, V, where they are known */
    PointMaker(Optional<BenchSheet> bench, ChannelEstimates estimates, Map<String, OptionalDouble> rails) {
        this.bench = bench;
        this.estimates = estimates;
        this.rails = new LinkedHashMap<>(rails);
    }

    /** For a run that goes on: its instruments are known in that run alone. */
    public static PointMaker ofRun(BenchSheet bench, Design design) {
        Optional<BenchSheet> known = Optional.of(bench);
        InstrumentNames names = new InstrumentNames("this run", List.of(), known);
        return new PointMaker(known, new ChannelEstimates(known, names, new BenchErrors()), nominal(design));
    }

    static Map<String, OptionalDouble> nominal(Design design) {
        Map<String, OptionalDouble> rails = new LinkedHashMap<>();
        design.rails().forEach(rail -> rails.put(rail.name(), OptionalDouble.of(rail.nominalVolts())));
        return rails;
    }

    /**
     * @param step measured
     * @param all the readings of its average, by channel
     * @return empty where the input was not read: then the step says nothing of the unit
     */
    public Optional<OperatingPoint> point(StepEntry step, SortedMap<Channel, Trace> all) {
        return testimony(step, all).map(Testimony::point);
    }

    /** As {@link #point}, with all that may bear witness beside it. */
    public Optional<Testimony> testimony(StepEntry step, SortedMap<Channel, Trace> all) {
        SortedMap<Channel, Trace> traces = new TreeMap<>(all);
        traces.values().removeIf(trace -> trace.count() == 0);
        PointMaker here = new PointMaker(bench, estimates.during(traces), rails);
        return here.seen(step, traces);
    }

    private Optional<Testimony> seen(StepEntry step, SortedMap<Channel, Trace> traces) {
        return worked(step, traces).map(point -> {
            Witness witness = new Witness(bench, estimates);
            return new Testimony(
                    point,
                    witness.means(step.stage() + " " + step.step(), traces),
                    witness.setAmps(step, rails.keySet()),
                    resistorAmps(step, traces, point));
        });
    }

    private Map<String, Estimate> resistorAmps(StepEntry step, SortedMap<Channel, Trace> traces, OperatingPoint point) {
        Map<String, Estimate> amps = new LinkedHashMap<>();
        point.rails().forEach((rail, at) -> fromResistor(
                        rail, traces, at.voltage(), step.loadAmps().getOrDefault(rail, 0.0))
                .ifPresent(current -> amps.put(rail, current)));
        return amps;
    }

    private Optional<OperatingPoint> worked(StepEntry step, SortedMap<Channel, Trace> traces) {
        String where = step.stage() + " " + step.step();
        PointBuilder builder = OperatingPoint.of(step.stage(), step.step())
                .during(
                        step.average().get().fromNanos() / 1e9,
                        step.average().get().toNanos() / 1e9)
                .settled(step.settled())
                .count(traces.values().stream()
                        .filter(trace -> !trace.channel().quantity().equals(Quantity.RESISTANCE))
                        .mapToInt(Trace::count)
                        .min()
                        .orElse(1));
        step.inputVolts().ifPresent(builder::setVolts);
        if (!input(builder, traces, where)) {
            return Optional.empty();
        }
        rails.keySet().forEach(rail -> rail(builder, traces, rail, step, where));
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
        } else {
            fromResistor(rail, traces, voltage, wanted)
                    .or(() -> Optional.ofNullable(amps).map(off -> switchedOff(off.channel())))
                    .ifPresent(current -> builder.railCurrent(rail, current));
        }
        Trace ripple = traces.get(new Channel(rail, Quantity.RIPPLE));
        if (ripple != null) {
            builder.ripple(rail, estimates.mean(ripple, where));
        }
    }

    /** A load whose input is off draws nothing, as far as what reads it can tell. */
    private Estimate switchedOff(Channel amps) {
        Estimate off = estimates.offBy(amps, 0);
        return off.known() ? off : Estimate.exact(0);
    }

    /** The current of the resistor that was switched to the rail; of the one asked for, where that was not kept. */
    private Optional<Estimate> fromResistor(String rail, Map<Channel, Trace> traces, Estimate voltage, double wanted) {
        Trace kept = traces.get(SwitchedResistor.channel(rail));
        if (wanted <= 0 && kept == null) {
            return Optional.empty();
        }
        return bench.flatMap(sheet -> sheet.bank(rail)).map(bank -> {
            double ohms = kept != null ? kept.values()[kept.count() - 1] : bank.nearest(asked(rail, voltage) / wanted);
            return voltage.abs().over(estimates.resistor(rail, ohms, bank.tolerancePct()));
        });
    }

    /** The voltage by which a resistor is asked for, V: the rail's nominal. */
    private double asked(String rail, Estimate voltage) {
        return Math.abs(rails.getOrDefault(rail, OptionalDouble.empty()).orElse(voltage.value()));
    }
}
