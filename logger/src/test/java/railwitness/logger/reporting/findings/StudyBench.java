package railwitness.logger.reporting.findings;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.ChannelAccuracy;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.rehearsal.BenchFixtures;
import railwitness.drivers.rehearsal.Imperfection;
import railwitness.logger.recording.points.BenchErrors;
import railwitness.logger.recording.points.ChannelEstimates;
import railwitness.logger.recording.points.InstrumentNames;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Trace;

/** The instruments of one session: what they are off by, and the estimates their readings give. */
final class StudyBench {
    private static final int READINGS = 10;
    private static final long SPACING_NANOS = 500_000_000L;

    private final BenchSheet sheet;
    private final Random random;
    private final boolean exact;
    private final ChannelEstimates estimates;
    private final Map<Channel, Imperfection> errors = new HashMap<>();
    private final Map<String, Trace> taken = new HashMap<>();
    private final Map<Channel, Double> shunts = new HashMap<>();

    /** @param exact instruments without any error: for the truth */
    StudyBench(Sheets sheets, Random random, boolean exact) {
        this.sheet = sheets.bench().content();
        this.random = random;
        this.exact = exact;
        this.estimates = new ChannelEstimates(
                Optional.of(sheet), new InstrumentNames("study", List.of(), Optional.of(sheet)), new BenchErrors());
    }

    /** Reads once; asked again, it is the same readings. */
    Estimate read(String channelName, double truth, String where) {
        if (exact) {
            return Estimate.exact(truth);
        }
        Channel channel = Channel.of(channelName);
        return estimates.mean(taken.computeIfAbsent(channel + where, key -> taken(channel, truth)), where);
    }

    private Trace taken(Channel channel, double truth) {
        double[] values = new double[READINGS];
        long[] nanos = new long[READINGS];
        for (int i = 0; i < READINGS; i++) {
            values[i] = shown(channel, truth);
            nanos[i] = i * SPACING_NANOS;
        }
        Trace trace = new Trace(channel, values, nanos, nanos, 0, 0);
        estimates.seen(trace);
        return trace;
    }

    private double shown(Channel channel, double truth) {
        ChannelAccuracy accuracy = sheet.accuracyOf(channel).orElseThrow();
        Imperfection error = errors.computeIfAbsent(
                channel,
                key -> new Imperfection(
                        BenchFixtures.stated(accuracy.accuracy().orElseThrow(), sheet.ambientDegC()), random));
        double shunt = shunts.computeIfAbsent(
                channel, key -> 1 + accuracy.shuntTolerancePct() / 100 * (2 * random.nextDouble() - 1));
        double own = truth * accuracy.perUnit() * shunt;
        return error.shown(own, accuracy.rangeFor(truth) * accuracy.perUnit(), 0) / accuracy.perUnit();
    }
}
