package railwitness.logger.recording.points;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import railwitness.analysis.transformer.Half;
import railwitness.analysis.transformer.SwitchOff;
import railwitness.analysis.transformer.WoundReadings;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.winding.Hookup;
import railwitness.drivers.winding.Hookup.Kind;
import railwitness.logger.recording.plan.TransformerTest;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.recording.store.Trace;

/** What a session read of a transformer alone on the bench. */
public final class SessionWinding {
    /** A room's temperature that nobody read is known no better, K (common practice, no source). */
    private static final double ROOM_KELVIN = 3;

    /** A thermometer of which nothing is stated, K (common practice, no source). */
    private static final double HAND_KELVIN = 1;

    /** A generator's frequency of which nothing is stated, as a share (common practice, no source). */
    private static final double HERTZ_SHARE = 0.01;

    private final SessionFile file;
    private final BenchSheet bench;
    private final Optional<TransformerTest> test;
    private final ChannelEstimates estimates;
    private final WindingChannels channels;
    private final Map<Hookup, SortedMap<Channel, Trace>> read = new java.util.LinkedHashMap<>();
    private final Map<Hookup, StepEntry> steps = new java.util.HashMap<>();

    private SessionWinding(SessionFile file, BenchSheet bench, Optional<TransformerTest> test, BenchErrors errors) {
        this.file = file;
        this.bench = bench;
        this.test = test;
        this.channels = new WindingChannels(bench);
        Optional<BenchSheet> known = Optional.of(bench);
        this.estimates =
                new ChannelEstimates(known, new InstrumentNames(file.head().id(), file.instruments(), known), errors);
        for (StepEntry step : file.steps()) {
            if (step.stage().equals(TransformerTest.WORD) && step.outcome() == StepOutcome.MEASURED) {
                Hookup.named(step.step()).ifPresent(hookup -> {
                    read.put(hookup, file.traces(step.average().orElseThrow()));
                    steps.put(hookup, step);
                });
            }
        }
    }

    /**
     * The readings of a session's transformer stage.
     *
     * @param hertz the design sheet's frequency, where it has one
     * @return empty where there was no such stage
     */
    public static Optional<WoundReadings> of(
            SessionFile file,
            Optional<BenchSheet> bench,
            Optional<TransformerTest> test,
            OptionalDouble hertz,
            BenchErrors errors) {
        boolean any = file.steps().stream().anyMatch(step -> step.stage().equals(TransformerTest.WORD));
        return bench.filter(sheet -> any).map(sheet -> new SessionWinding(file, sheet, test, errors).readings(hertz));
    }

    private WoundReadings readings(OptionalDouble hertz) {
        Map<Half, WoundReadings.BothWays> ohms = new EnumMap<>(Half.class);
        Map<Half, Estimate> volts = new EnumMap<>(Half.class);
        for (var half : railwitness.drivers.winding.Half.values()) {
            Half own = Half.valueOf(half.name());
            bothWays(half).ifPresent(ways -> ohms.put(own, ways));
            alternating(Hookup.of(Kind.VOLTS, half)).ifPresent(value -> volts.put(own, value));
        }
        double drive = test.map(TransformerTest::driveHz)
                .filter(OptionalDouble::isPresent)
                .orElse(hertz)
                .orElse(25_000);
        return new WoundReadings(
                ohms,
                ohms.isEmpty() ? Optional.empty() : Optional.of(temperature()),
                volts,
                alternating(Hookup.of(Kind.PRIMARIES)),
                alternating(Hookup.of(Kind.SECONDARIES)),
                alternating(Hookup.of(Kind.ONE_TURN)),
                driven(
                        alternating(Hookup.of(Kind.VOLTS, railwitness.drivers.winding.Half.PRIMARY_A)),
                        alternating(Hookup.of(Kind.RESISTOR)),
                        alternating(Hookup.of(Kind.BOTH))),
                driven(
                        alternating(Hookup.of(Kind.SHORTED_WINDING)),
                        alternating(Hookup.of(Kind.SHORTED_RESISTOR)),
                        Optional.empty()),
                share("frequency of the generator", drive, HERTZ_SHARE),
                part("resistor in series", test.map(TransformerTest::senseOhms), 1),
                mean(Hookup.of(Kind.RINGING), channels.frequency()),
                part("capacitor of the ringing", test.map(TransformerTest::ringMicrofarads), 1e-6),
                cooling());
    }

    private Optional<WoundReadings.BothWays> bothWays(railwitness.drivers.winding.Half half) {
        Hookup one = Hookup.of(Kind.ONE_WAY, half);
        Hookup other = Hookup.of(Kind.OTHER_WAY, half);
        return mean(one, channels.volts()).flatMap(volts -> mean(one, channels.amps())
                .flatMap(amps -> mean(other, channels.volts()).flatMap(back -> mean(other, channels.amps())
                        .map(backAmps -> new WoundReadings.BothWays(
                                volts, amps.abs(), back, backAmps.abs().negate())))));
    }

    private static Optional<WoundReadings.Driven> driven(
            Optional<Estimate> winding, Optional<Estimate> resistor, Optional<Estimate> both) {
        return winding.flatMap(volts -> resistor.map(drop -> new WoundReadings.Driven(volts, drop, both)));
    }

    private Optional<Estimate> alternating(Hookup hookup) {
        return mean(hookup, channels.alternating());
    }

    private Optional<Estimate> mean(Hookup hookup, Channel channel) {
        return Optional.ofNullable(read.get(hookup))
                .map(traces -> traces.get(channel))
                .filter(trace -> trace.count() > 0)
                .map(trace -> estimates.mean(trace, hookup.name()));
    }

    private Optional<Estimate> part(String name, Optional<OptionalDouble> nominal, double scale) {
        return nominal.filter(OptionalDouble::isPresent)
                .map(value -> share(
                        name,
                        value.getAsDouble() * scale,
                        test.map(TransformerTest::tolerancePct).orElse(0.0) / 100));
    }

    private static Estimate share(String name, double value, double share) {
        return share == 0
                ? Estimate.exact(value)
                : Estimate.of(value, Influence.rectangular(name, share, "1").times(value));
    }

    /** As read before the first connection; else the room's of the bench sheet. */
    private Estimate temperature() {
        Trace trace = file.trace(channels.temperature(), TimeSpan.ALL);
        if (trace.count() == 0) {
            return Estimate.of(
                    bench.ambientDegC(),
                    Influence.rectangular("temperature of the room by the bench sheet", ROOM_KELVIN, "degC")
                            .times(1));
        }
        double first = trace.values()[0];
        double half = bench.accuracyOf(channels.temperature())
                .flatMap(accuracy -> accuracy.halfWidthAt(first, accuracy.rangeFor(first)).stream()
                        .boxed()
                        .findFirst())
                .orElse(HAND_KELVIN);
        return Estimate.of(
                first,
                Influence.rectangular("temperature of the transformer", Math.max(1e-6, half), "degC")
                        .times(1));
    }

    private List<SwitchOff.Reading> cooling() {
        List<SwitchOff.Reading> readings = new ArrayList<>();
        for (Hookup hookup : read.keySet()) {
            if (hookup.kind() == Kind.COOLING) {
                StepEntry step = steps.get(hookup);
                TimeSpan span = step.average().orElseThrow();
                double seconds = ((span.fromNanos() + span.toNanos()) / 2 - step.beginNanos()) / 1e9;
                mean(hookup, channels.volts()).ifPresent(volts -> mean(hookup, channels.amps())
                        .ifPresent(amps -> readings.add(new SwitchOff.Reading(seconds, volts.over(amps.abs())))));
            }
        }
        return readings;
    }
}
