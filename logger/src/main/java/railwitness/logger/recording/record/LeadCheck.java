package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.ChannelAccuracy;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.Source;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.sheet.Sheets;

/**
 * The leads of a bench before power, with every output off: what meters show when they are shorted, what the rails and
 * the input show at rest, each held against what the sheets allow.
 */
public final class LeadCheck {
    private static final Channel INPUT = new Channel("input", Quantity.VOLTAGE);
    private static final Channel SUPPLY = new Channel("supply", Quantity.VOLTAGE);
    private static final Set<Quantity> VOLTAGES = Set.of(Quantity.VOLTAGE, Quantity.RIPPLE);

    private final Sheets sheets;
    private final Design design;
    private final BenchSheet bench;

    private LeadCheck(Sheets sheets) {
        this.sheets = sheets;
        this.design = sheets.design().content();
        this.bench = sheets.bench().content();
    }

    public static LeadCheck of(Sheets sheets) {
        return new LeadCheck(sheets);
    }

    /**
     * A meter whose leads can be put together.
     *
     * @param byHand the person reads it
     */
    public record Shorting(String instrument, Channel reads, boolean byHand) {}

    /** Meters that measure a voltage, also the drop of a shunt or a ripple: those with a wire, then those in hand. */
    public List<Shorting> shortings() {
        List<Shorting> all = new ArrayList<>();
        bench.instruments().forEach(instrument -> {
            if (instrument.duty() instanceof Duty.AsMeter meter
                    && VOLTAGES.contains(meter.setting().function())) {
                all.add(new Shorting(instrument.name(), meter.setting().reads(), false));
            }
        });
        bench.handRead().stream()
                .filter(meter -> VOLTAGES.contains(meter.reads().quantity()))
                .forEach(meter -> all.add(new Shorting(meter.name(), meter.reads(), true)));
        return all;
    }

    /**
     * The zero of a meter with its leads shorted, by the mean of its readings.
     *
     * @param values in the unit of what it reads, at least one; judged as the voltage it measures itself
     */
    public LeadFinding zero(Shorting meter, List<Double> values) {
        ChannelAccuracy stated = bench.accuracyOf(meter.reads()).orElseThrow();
        double mean = values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        return LeadFinding.of(
                LeadFinding.Kind.ZERO,
                meter.instrument(),
                mean * stated.perUnit(),
                OptionalDouble.empty(),
                offset(stated));
    }

    /** What a meter may show at zero, V; empty where the sheet does not tell. */
    private static OptionalDouble offset(ChannelAccuracy stated) {
        OptionalDouble half = halfWidth(stated, 0);
        return half.isPresent() && half.getAsDouble() > 0
                ? OptionalDouble.of(half.getAsDouble() * stated.perUnit())
                : OptionalDouble.empty();
    }

    /**
     * How far a value may be off in the range the instrument is set to, in the channel's unit; empty where that is not
     * stated, also where it is a share of a range that the instrument chooses by itself.
     */
    private static OptionalDouble halfWidth(ChannelAccuracy stated, double value) {
        List<Double> ranges = stated.ranges();
        boolean unknown = ranges.isEmpty()
                && stated.accuracy().filter(known -> known.rangePct() > 0).isPresent();
        double range = ranges.isEmpty() ? 0 : ranges.get(ranges.size() - 1) / stated.perUnit();
        return unknown ? OptionalDouble.empty() : stated.halfWidthAt(value, range);
    }

    /** Voltages of rails that instruments read by themselves. */
    public List<Channel> rails() {
        return design.rails().stream()
                .map(rail -> new Channel(rail.name(), Quantity.VOLTAGE))
                .filter(this::wired)
                .toList();
    }

    private boolean wired(Channel channel) {
        return bench.instruments().stream()
                .anyMatch(instrument ->
                        !instrument.isScope() && instrument.reads().contains(channel));
    }

    /** A rail at rest, V, against the voltage below which it may be touched. */
    public LeadFinding atRest(Channel rail, double volts) {
        return LeadFinding.of(
                LeadFinding.Kind.REST,
                rail.toString(),
                volts,
                OptionalDouble.empty(),
                OptionalDouble.of(FirstPowerSettings.touchVolts(design)));
    }

    /** The channels of which both must be read for {@link #input}; none where there is no supply or no input meter. */
    public List<Channel> inputChannels() {
        return wired(INPUT) && wired(SUPPLY) ? List.of(SUPPLY, INPUT) : List.of();
    }

    /**
     * What the input meter shows against what the supply, its output off, reads back, V. Only a battery may hold the
     * input up then.
     */
    public Optional<LeadFinding> input(double supplyVolts, double inputVolts) {
        if (inputChannels().isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble supply = halfWidth(SUPPLY, supplyVolts);
        OptionalDouble input = halfWidth(INPUT, inputVolts);
        LeadFinding found = LeadFinding.of(
                LeadFinding.Kind.INPUT,
                INPUT.toString(),
                inputVolts,
                OptionalDouble.of(supplyVolts),
                supply.isPresent() && input.isPresent()
                        ? OptionalDouble.of(supply.getAsDouble() + input.getAsDouble())
                        : OptionalDouble.empty());
        boolean held = Math.abs(inputVolts) > FirstPowerSettings.touchVolts(design);
        return Optional.of(held && bench.source() == Source.SUPPLY ? found.beyond() : found);
    }

    private OptionalDouble halfWidth(Channel channel, double value) {
        return bench.accuracyOf(channel).map(stated -> halfWidth(stated, value)).orElse(OptionalDouble.empty());
    }

    /** Terminals that the wiring of this bench joins or earths, in words. */
    public List<String> joined() {
        return BriefingMaker.joined(sheets);
    }
}
