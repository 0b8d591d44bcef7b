package railwitness.logger.recording.points;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.steady.Average;
import railwitness.analysis.steady.Memory;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.analysis.uncertainty.Term;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.ChannelAccuracy;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.InstrumentError;
import railwitness.logger.recording.store.Trace;

/**
 * Means of channels as estimates. What may be wrong with an instrument is one influence for the whole session, so that
 * everything read with it on one range is off together; with errors handed in by another session, also for that one.
 */
public final class ChannelEstimates {
    private final Optional<BenchSheet> bench;
    private final BenchErrors errors;
    private final InstrumentNames names;
    private final ReadDigits digits = new ReadDigits();
    private final Map<Channel, Memory> memories;

    private final Map<Channel, Double> drifts;

    public ChannelEstimates(Optional<BenchSheet> bench, InstrumentNames names, BenchErrors errors) {
        this(bench, names, errors, Map.of(), new HashMap<>());
    }

    private ChannelEstimates(
            Optional<BenchSheet> bench,
            InstrumentNames names,
            BenchErrors errors,
            Map<Channel, Double> drifts,
            Map<Channel, Memory> memories) {
        this.bench = bench;
        this.names = names;
        this.errors = errors;
        this.drifts = drifts;
        this.memories = memories;
    }

    /** The same for the readings of one average: what drifted between the visits of a meter that is moved counts. */
    ChannelEstimates during(Map<Channel, Trace> traces) {
        return new ChannelEstimates(
                bench,
                names,
                errors,
                bench.map(sheet -> Visits.drifts(sheet, traces)).orElse(Map.of()),
                memories);
    }

    /**
     * Readings of a session, before any mean is taken: what a person typed tells how finely a meter could be read, and all
     * steps together how long readings resemble each other.
     */
    public void seen(Trace trace) {
        if (trace.count() > 0) {
            memory(trace.channel()).learn(middles(trace), trace.values());
        }
        handRead(trace);
    }

    private void handRead(Trace trace) {
        if (byHand(trace.channel())) {
            digits.seen(trace);
        }
    }

    private boolean byHand(Channel channel) {
        return bench.stream().flatMap(sheet -> sheet.handRead().stream()).anyMatch(meter -> meter.reads()
                .equals(channel));
    }

    private Memory memory(Channel channel) {
        return memories.computeIfAbsent(channel, key -> new Memory());
    }

    private static double[] middles(Trace trace) {
        double[] seconds = new double[trace.count()];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = (trace.requestedNanos()[i] + trace.repliedNanos()[i]) / 2e9;
        }
        return seconds;
    }

    /** @param where the step, for the name of its scatter in a budget */
    public Estimate mean(Trace trace, String where) {
        Channel channel = trace.channel();
        String unit = channel.quantity().unit();
        Average average = Average.of(channel + ", " + where, unit, middles(trace), trace.values(), memory(channel));
        Optional<ChannelAccuracy> accuracy = bench.flatMap(sheet -> sheet.accuracyOf(channel));
        if (accuracy.isEmpty() || accuracy.get().accuracy().isEmpty()) {
            return average.mean().scatterOnly();
        }
        double value = average.mean().value();
        handRead(trace);
        Estimate estimate = average.mean()
                .plus(offBy(accuracy.get(), value, unit))
                .plus(LastDigit.of(accuracy.get(), digits.decimals(channel), channel, where));
        double drift = drifts.getOrDefault(channel, 0.0);
        return drift > 0
                ? estimate.with(Influence.rectangular("drift between visits, " + where, drift, "1")
                        .times(value))
                : estimate;
    }

    /** An estimate of zero with what the channel's instrument may be off by at a value; scatter only where not stated. */
    public Estimate offBy(Channel channel, double value) {
        return bench.flatMap(sheet -> sheet.accuracyOf(channel))
                .filter(accuracy -> accuracy.accuracy().isPresent())
                .map(accuracy -> offBy(accuracy, value, channel.quantity().unit()))
                .orElseGet(() -> Estimate.exact(0).scatterOnly());
    }

    /** An estimate of zero that carries what the instrument may be off by at this value. */
    private Estimate offBy(ChannelAccuracy accuracy, double value, String unit) {
        List<Term> terms = new ArrayList<>();
        for (InstrumentError contribution : accuracy.contributions(value, accuracy.rangeFor(value))) {
            double own = contribution.relative() ? Math.abs(value) : 1;
            double size = Math.abs(contribution.effect()) / own;
            Influence error = influence(accuracy, contribution, size, contribution.relative() ? "1" : unit);
            terms.add(new Term(error, Math.copySign(contribution.standardUncertainty(), contribution.effect())));
        }
        return Estimate.of(0, terms);
    }

    /** In the error's own unit, as a budget prints it: the share of the value, or volts and amperes. */
    private Influence influence(ChannelAccuracy accuracy, InstrumentError contribution, double size, String unit) {
        String key = names.of(accuracy.instrument())
                + contribution.sharedAs().replace(accuracy.instrument(), "") + " " + accuracy.perUnit() + " "
                + contribution.kind();
        return errors.of(
                key,
                () -> contribution.kind() == InstrumentError.Kind.RECTANGULAR
                        ? Influence.rectangular(contribution.name(), size, unit)
                        : Influence.normal(contribution.name(), size, unit));
    }

    /** A resistor of a load bank, off by its tolerance for the whole session. */
    public Estimate resistor(String rail, double ohms, double tolerancePct) {
        Influence tolerance = errors.of(
                names.session() + " resistor " + rail + " " + ohms,
                () -> Influence.rectangular("tolerance of the " + rail + " load resistor", tolerancePct / 100, "1"));
        return Estimate.of(ohms, tolerance.times(ohms));
    }
}
