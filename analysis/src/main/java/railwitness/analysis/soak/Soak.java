package railwitness.analysis.soak;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.steady.PowerStability;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * What a hold showed.
 *
 * @param record the readings it comes from
 * @param temperatures by place, the heat sink first
 * @param thermalResistance final rise of the heat sink over the loss, K/W
 * @param drifts voltages, ripples, input power and efficiency
 * @param stability the rules, in their order
 * @param others the session's other holds, the longer first
 */
public record Soak(
        SoakRecord record,
        List<PlaceTemperature> temperatures,
        Optional<Estimate> thermalResistance,
        List<HoldDrift> drifts,
        List<RuleMet> stability,
        List<Soak> others) {
    /** Room left to the final temperature that counts as reached, K. */
    public static final double REACHED_KELVIN = 1;

    /** A room that is only stated may be off by so much, K (common practice, no source). */
    private static final double STATED_AMBIENT_KELVIN = 3;

    private static final double BAND = 0.95;

    public Soak {
        temperatures = List.copyOf(temperatures);
        drifts = List.copyOf(drifts);
        stability = List.copyOf(stability);
        others = List.copyOf(others);
    }

    /** Works everything out. */
    public static Soak of(SoakRecord record) {
        List<PlaceTemperature> places = new ArrayList<>();
        record.temperatures().forEach((place, series) -> place(record, place, series)
                .ifPresent(found -> places.add(isHeatSink(place) ? 0 : places.size(), found)));
        Optional<SoakSeries> leading = leading(record);
        Optional<Estimate> resistance = places.stream().findFirst().flatMap(first -> first.rise()
                .flatMap(rise -> record.loss().filter(loss -> loss.value() > 0).map(rise::over)));
        return new Soak(
                record,
                places,
                resistance,
                record.rests() > 0 ? List.of() : drifts(record, leading.map(SoakSeries::values)),
                stability(record, leading.map(SoakSeries::values)),
                record.others().stream().map(Soak::of).toList());
    }

    /** Whether a place's name means the heat sink. */
    public static boolean isHeatSink(String place) {
        return place.replace("-", "").replace("_", "").startsWith("heatsink");
    }

    private static Optional<SoakSeries> leading(SoakRecord record) {
        return record.temperatures().entrySet().stream()
                .filter(entry -> isHeatSink(entry.getKey()))
                .map(java.util.Map.Entry::getValue)
                .findFirst()
                .or(() -> record.temperatures().values().stream().findFirst());
    }

    /** The place of that kind. */
    public Optional<PlaceTemperature> place(java.util.function.Predicate<String> named) {
        return temperatures.stream().filter(one -> named.test(one.place())).findFirst();
    }

    private static Optional<PlaceTemperature> place(SoakRecord record, String place, SoakSeries series) {
        Optional<double[]> air = record.ambient().map(SoakSeries::values);
        Sampled read = air.isPresent()
                ? Sampled.of(0, record.seconds(), series.values(), air.get())
                : Sampled.of(0, record.seconds(), series.values());
        if (read.size() < 2) {
            return Optional.empty();
        }
        return WarmUp.of(read.seconds(), read.columns()[0], air.map(any -> read.columns()[1]), record.breaks())
                .filter(fit -> !fit.tooShort())
                .map(fit -> told(record, place, series, read, fit));
    }

    private static PlaceTemperature told(SoakRecord record, String place, SoakSeries series, Sampled read, WarmUp fit) {
        Estimate curve = fit.finalCelsius();
        Estimate end = joined(curve, series);
        Estimate last = joined(Estimate.exact(lastTenth(read.columns()[0])), series);
        Estimate tau = fit.timeConstantSeconds();
        boolean toldTau = tau.coverage(BAND).expanded() < tau.value() && fit.rangeKelvin() > 3 * fit.scatterKelvin();
        Estimate until = fit.secondsUntil(REACHED_KELVIN);
        boolean reached = Math.abs(curve.value() - last.value()) <= REACHED_KELVIN
                && curve.coverage(BAND).expanded() <= 2 * REACHED_KELVIN;
        return new PlaceTemperature(
                place,
                last,
                end,
                rise(record, fit, end, series),
                toldTau ? Optional.of(tau) : Optional.empty(),
                until.coverage(BAND).expanded() < Math.max(until.value(), record.toSeconds() - record.fromSeconds())
                        ? Optional.of(until)
                        : Optional.empty(),
                reached,
                fit);
    }

    private static Optional<Estimate> rise(SoakRecord record, WarmUp fit, Estimate end, SoakSeries series) {
        if (record.ambient().isPresent()) {
            SoakSeries air = record.ambient().get();
            double room = fit.finalCelsius().value() - fit.finalAboveAmbient().value();
            return Optional.of(end.minus(joined(Estimate.exact(room), air)));
        }
        return record.statedAmbient().isPresent()
                ? Optional.of(end.minus(Estimate.of(
                        record.statedAmbient().getAsDouble(),
                        Influence.rectangular("room as the bench sheet states it", STATED_AMBIENT_KELVIN, "K")
                                .times(1))))
                : Optional.empty();
    }

    private static Estimate joined(Estimate value, SoakSeries series) {
        return value.plus(series.offBy().apply(value.value()));
    }

    private static double lastTenth(double[] values) {
        int from = values.length - Math.max(1, values.length / 10);
        double sum = 0;
        for (int i = from; i < values.length; i++) {
            sum += values[i];
        }
        return sum / (values.length - from);
    }

    private static List<HoldDrift> drifts(SoakRecord record, Optional<double[]> temperature) {
        List<HoldDrift> drifts = new ArrayList<>();
        Optional<double[]> input = record.inputVolts().map(SoakSeries::values);
        record.rails().forEach((rail, series) -> HoldDrift.of(
                        "voltage", Optional.of(rail), record.seconds(), series.values(), temperature, input)
                .ifPresent(drifts::add));
        record.ripples().forEach((rail, series) -> HoldDrift.of(
                        "ripple", Optional.of(rail), record.seconds(), series.values(), temperature, input)
                .ifPresent(drifts::add));
        record.inputWatts()
                .flatMap(watts ->
                        HoldDrift.of("input power", Optional.empty(), record.seconds(), watts, temperature, input))
                .ifPresent(drifts::add);
        efficiency(record)
                .flatMap(share -> HoldDrift.of(
                        "efficiency", Optional.empty(), record.seconds(), share, temperature, Optional.empty()))
                .ifPresent(drifts::add);
        return drifts;
    }

    /** Output over input power of each column; empty where one of them was not read. */
    public static Optional<double[]> efficiency(SoakRecord record) {
        if (record.inputWatts().isEmpty() || record.outputWatts().isEmpty()) {
            return Optional.empty();
        }
        double[] share = new double[record.seconds().length];
        for (int i = 0; i < share.length; i++) {
            double in = record.inputWatts().get()[i];
            share[i] = in > 0 ? record.outputWatts().get()[i] / in : Double.NaN;
        }
        return Optional.of(share);
    }

    private static List<RuleMet> stability(SoakRecord record, Optional<double[]> temperature) {
        List<RuleMet> met = new ArrayList<>();
        temperature.map(degrees -> Sampled.of(0, record.seconds(), degrees)).ifPresent(read -> {
            for (StabilityRule rule : StabilityRule.values()) {
                if (read.size() > 1) {
                    met.add(new RuleMet(rule.words(), rule.firstMet(read.seconds(), read.columns()[0])));
                }
            }
        });
        record.inputWatts()
                .map(watts -> Sampled.of(0, record.seconds(), watts))
                .filter(read -> read.size() > 1)
                .ifPresent(read -> met.add(new RuleMet(
                        PowerStability.NAME + ": input power within " + (record.outputs() > 1 ? "1" : "5")
                                + " % over 5 min after 30 min",
                        firstSteadyPower(record, read))));
        return met;
    }

    /** Looked for every minute from the first moment on at which the rule can be kept. */
    private static OptionalDouble firstSteadyPower(SoakRecord record, Sampled read) {
        double[] t = read.seconds();
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < t.length; i++) {
            double since = t[i] - record.fromSeconds();
            if (since < 2100 || t[i] < last + 60) {
                continue;
            }
            last = t[i];
            int from = i;
            while (from > 0 && t[from] > t[i] - 300) {
                from--;
            }
            double[] seconds = java.util.Arrays.copyOfRange(t, from, i + 1);
            double[] watts = java.util.Arrays.copyOfRange(read.columns()[0], from, i + 1);
            if (seconds.length > 1
                    && PowerStability.of(record.outputs(), since - 300, seconds, watts)
                            .kept()) {
                return OptionalDouble.of(t[i]);
            }
        }
        return OptionalDouble.empty();
    }
}
