package railwitness.logger.reporting.findings;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.supply.DriveWaveform;
import railwitness.analysis.supply.RippleWaveform;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.analysis.uncertainty.Term;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.ChannelAccuracy;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.InstrumentError;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Waveform;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.WaveformEntry;

/** The waveforms of a session worked out: the last of each rail, and the highest drain voltage. */
final class SessionWaveforms {
    private static final String DRAIN = "drain";
    private static final int LEAST_SAMPLES = 16;

    private final Optional<Design> design;
    private final Optional<BenchSheet> bench;
    private final Map<Channel, SessionEvent.TraceTaken> notes = new HashMap<>();
    private final Map<Channel, Waveform> last = new LinkedHashMap<>();

    SessionWaveforms(
            List<WaveformEntry> waveforms,
            List<EventEntry> events,
            Optional<Design> design,
            Optional<BenchSheet> bench) {
        this.design = design;
        this.bench = bench;
        events.forEach(entry -> {
            if (entry.event() instanceof SessionEvent.TraceTaken trace) {
                notes.put(trace.channel(), trace);
            }
        });
        waveforms.stream()
                .map(WaveformEntry::waveform)
                .filter(waveform -> waveform.values().length >= LEAST_SAMPLES)
                .forEach(waveform -> last.put(waveform.channel(), waveform));
    }

    /** By rail. */
    Map<String, RippleWaveform> ripple() {
        Map<String, RippleWaveform> byRail = new LinkedHashMap<>();
        last.forEach((channel, waveform) -> {
            boolean alternating = channel.quantity() == Quantity.RIPPLE || channel.quantity() == Quantity.VOLTAGE;
            if (alternating && !isDrain(channel)) {
                byRail.put(
                        channel.node(),
                        RippleWaveform.of(
                                waveform.values(),
                                waveform.stepSeconds(),
                                cycleHz(),
                                bandwidthHz(channel),
                                gain(channel)));
            }
        });
        return byRail;
    }

    /** Highest of all drains, V. */
    Optional<Estimate> drainPeak() {
        return last.entrySet().stream()
                .filter(entry -> isDrain(entry.getKey()) && entry.getKey().quantity() == Quantity.VOLTAGE)
                .map(entry -> peak(entry.getKey(), entry.getValue()))
                .max(java.util.Comparator.comparingDouble(Estimate::value));
    }

    /** What the drain that was looked at last shows of the drive. */
    Optional<DriveWaveform> drive() {
        return last.entrySet().stream()
                .filter(entry -> isDrain(entry.getKey()) && entry.getKey().quantity() == Quantity.VOLTAGE)
                .flatMap(entry ->
                        DriveWaveform.of(
                                entry.getValue().values(), entry.getValue().stepSeconds(), gain(entry.getKey()))
                                .stream())
                .reduce((before, after) -> after);
    }

    private static boolean isDrain(Channel channel) {
        return channel.node().startsWith(DRAIN);
    }

    private Estimate peak(Channel channel, Waveform waveform) {
        double volts = Arrays.stream(waveform.values()).max().orElseThrow();
        Optional<Term> gain = gain(channel);
        if (gain.isEmpty()) {
            return Estimate.exact(volts).scatterOnly();
        }
        Estimate peak =
                Estimate.of(volts, new Term(gain.get().influence(), gain.get().coefficient() * volts));
        return offset(channel, volts).map(peak::with).orElse(peak);
    }

    private OptionalDouble cycleHz() {
        return design.map(sheet -> sheet.converter().frequencyHz()).orElse(OptionalDouble.empty());
    }

    private OptionalDouble bandwidthHz(Channel channel) {
        if (notes.containsKey(channel)) {
            return notes.get(channel).bandHz();
        }
        return bench.flatMap(sheet -> sheet.scopeOf(channel))
                .filter(scope -> scope.bandHz().size() == 2)
                .map(scope -> OptionalDouble.of(scope.bandHz().get(1)))
                .orElse(OptionalDouble.empty());
    }

    /** Per volt. An imported trace has the accuracy stated with it, another that of the scope on the sheet. */
    private Optional<Term> gain(Channel channel) {
        if (notes.containsKey(channel)) {
            OptionalDouble percent = notes.get(channel).gainPct();
            return percent.isEmpty()
                    ? Optional.empty()
                    : Optional.of(Influence.rectangular("gain of the scope", percent.getAsDouble() / 100, "1")
                            .times(1));
        }
        return contribution(channel, 1, true).map(part -> term(part, "1"));
    }

    private Optional<Term> offset(Channel channel, double volts) {
        return notes.containsKey(channel)
                ? Optional.empty()
                : contribution(channel, volts, false).map(part -> term(part, "V"));
    }

    private Optional<InstrumentError> contribution(Channel channel, double volts, boolean relative) {
        Optional<ChannelAccuracy> accuracy = bench.flatMap(sheet -> sheet.waveformAccuracyOf(channel));
        return accuracy.flatMap(stated -> stated.contributions(volts, stated.rangeFor(volts)).stream()
                .filter(part -> part.relative() == relative)
                .findFirst());
    }

    private static Term term(InstrumentError part, String unit) {
        double size = Math.abs(part.effect());
        return (part.kind() == InstrumentError.Kind.RECTANGULAR
                        ? Influence.rectangular(part.name(), size, unit)
                        : Influence.normal(part.name(), size, unit))
                .times(1);
    }
}
