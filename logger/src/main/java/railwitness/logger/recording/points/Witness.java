package railwitness.logger.recording.points;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.analysis.contradiction.Mean;
import railwitness.analysis.contradiction.Testimony;
import railwitness.analysis.contradiction.Witnesses;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.Source;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.Trace;

/** What the instruments of a bench say beside the operating points. */
public final class Witness {
    private static final Set<Quantity> ASKED =
            Set.of(Quantity.VOLTAGE, Quantity.CURRENT, Quantity.POWER, Quantity.RIPPLE);

    private final Optional<BenchSheet> bench;
    private final ChannelEstimates estimates;

    Witness(Optional<BenchSheet> bench, ChannelEstimates estimates) {
        this.bench = bench;
        this.estimates = estimates;
    }

    /** By channel as it is written. */
    Map<String, Mean> means(String where, Map<Channel, Trace> traces) {
        Map<String, Mean> means = new LinkedHashMap<>();
        traces.forEach((channel, trace) -> {
            if (ASKED.contains(channel.quantity())) {
                means.put(channel.toString(), mean(estimates.mean(trace, where), trace.values()));
            }
        });
        return means;
    }

    private static Mean mean(Estimate estimate, double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double median = sorted[sorted.length / 2];
        double last = sorted[sorted.length - 1];
        double farthest = median - sorted[0] > last - median ? sorted[0] : last;
        return new Mean(estimate, still(values), median, farthest);
    }

    private static boolean still(double[] values) {
        for (double value : values) {
            if (value != values[0]) {
                return false;
            }
        }
        return true;
    }

    /** Set points of loads that hold a current: not those of resistors, which only come near. */
    Map<String, Double> setAmps(StepEntry step, Set<String> rails) {
        Map<String, Double> amps = new LinkedHashMap<>();
        if (!step.loadAmps().isEmpty()) {
            rails.stream()
                    .filter(this::programmable)
                    .forEach(rail -> amps.put(rail, step.loadAmps().getOrDefault(rail, 0.0)));
        }
        return amps;
    }

    private boolean programmable(String rail) {
        return bench.map(sheet -> sheet.bank(rail).isEmpty()).orElse(true);
    }

    /** With what the bench sheet says of the source. */
    public static Witnesses all(List<Testimony> testimonies, Optional<BenchSheet> bench) {
        boolean sole = bench.map(sheet -> sheet.source() == Source.SUPPLY).orElse(true);
        return new Witnesses(testimonies, sole, bench.map(Witness::supplyAmps).orElse(OptionalDouble.empty()));
    }

    private static OptionalDouble supplyAmps(BenchSheet bench) {
        return bench.instruments().stream()
                .filter(instrument -> instrument.duty() instanceof Duty.AsSupply)
                .map(instrument -> ((Duty.AsSupply) instrument.duty()).setting().highestAmps())
                .findFirst()
                .orElse(OptionalDouble.empty());
    }
}
