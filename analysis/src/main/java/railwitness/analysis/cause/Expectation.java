package railwitness.analysis.cause;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.design.Deviation;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.supply.OperatingPoint;

/** What the design's closed form says every sign would be, for a unit with a deviation, at the points measured. */
final class Expectation {
    private static final double EVERY_OTHER_PULSE = 0.95;

    private final Bench bench;
    private final double standbyAmperes;
    private final double leadOhms;

    Expectation(Bench bench, double standbyAmperes, double leadOhms) {
        this.bench = bench;
        this.standbyAmperes = standbyAmperes;
        this.leadOhms = leadOhms;
    }

    /** Values by {@link Symptom#key}; {@code extraLeadOhms} lie between source and terminals. */
    Map<String, Double> of(Deviation deviation, double extraLeadOhms) {
        Map<String, Double> values = new LinkedHashMap<>();
        put(values, Sign.STANDBY, standbyAmperes + deviation.extraStandbyAmperes());
        put(values, Sign.SOURCE, leadOhms + extraLeadOhms);
        ratio(values, deviation);
        atCycle(values, deviation);
        Optional<Prediction> idle = bench.idle().map(point -> at(point, deviation, volts(point)));
        idle.filter(Prediction::complete).ifPresent(prediction -> put(values, Sign.IDLE, prediction.inputWatts()));
        bench.light().ifPresent(point -> {
            Prediction light = at(point, deviation, volts(point));
            for (String rail : bench.points().rails()) {
                light.rail(rail)
                        .ifPresent(level -> values.put(Symptom.key(Sign.LEVEL, Optional.of(rail)), Math.abs(level)));
            }
        });
        bench.heavy().ifPresent(point -> heavy(values, at(point, deviation, volts(point)), idle));
        if (bench.sags()) {
            sag(values, deviation);
        }
        return values;
    }

    private void ratio(Map<String, Double> values, Deviation deviation) {
        double more = (double) deviation.secondaryTurns() / bench.transformer().primaryTurns();
        boolean halved = bench.design().converter().filter() == FilterInput.CHOKE;
        for (String rail : bench.points().rails()) {
            double share = halved && missing(deviation, rail) ? 0.5 : 1;
            double ratio = more
                    + bench.design()
                            .rail(rail)
                            .map(sheet -> bench.design().ratio(sheet).orElseThrow())
                            .orElse(bench.transformer().ratio());
            values.put(Symptom.key(Sign.RATIO, Optional.of(rail)), ratio * share);
        }
    }

    private void atCycle(Map<String, Double> values, Deviation deviation) {
        for (String rail : bench.points().rails()) {
            values.put(
                    Symptom.key(Sign.AT_CYCLE, Optional.of(rail)), missing(deviation, rail) ? EVERY_OTHER_PULSE : 0.0);
        }
    }

    private static boolean missing(Deviation deviation, String rail) {
        if (deviation.pulses() instanceof Deviation.HalfOfRail half) {
            return half.rail().equals(rail);
        }
        return !(deviation.pulses() instanceof Deviation.AllPulses);
    }

    private void heavy(Map<String, Double> values, Prediction heavy, Optional<Prediction> idle) {
        idle.filter(none -> none.complete() && heavy.complete())
                .ifPresent(none -> put(values, Sign.LOAD_LOSS, heavy.totalLossWatts() - none.inputWatts()));
        if (heavy.rippleRmsVolts().size() == bench.points().rails().size()) {
            putPair(values, Sign.RIPPLE, Sign.RIPPLE_DIFFERENCE, heavy.rippleRmsVolts());
        }
    }

    private void sag(Map<String, Double> values, Deviation deviation) {
        OperatingPoint light = bench.light().orElseThrow();
        OperatingPoint heavy = bench.heavy().orElseThrow();
        Prediction above = at(light, deviation, volts(heavy));
        Prediction below = at(heavy, deviation, volts(heavy));
        if (!above.railVolts().keySet().containsAll(bench.points().rails())
                || !below.railVolts().keySet().containsAll(bench.points().rails())) {
            return;
        }
        Map<String, Double> ohms = new LinkedHashMap<>();
        for (String rail : bench.points().rails()) {
            double fall = Math.abs(above.railVolts().get(rail))
                    - Math.abs(below.railVolts().get(rail));
            double step = Bench.amperes(heavy, rail).value()
                    - Bench.amperes(light, rail).value();
            ohms.put(rail, fall / step);
        }
        putPair(values, Sign.SAG, Sign.SAG_DIFFERENCE, ohms);
    }

    /** Geometric mean of the rails and, of two rails, the first over the second. */
    private void putPair(Map<String, Double> values, Sign mean, Sign difference, Map<String, Double> byRail) {
        double product = 1;
        for (String rail : bench.points().rails()) {
            product *= Math.max(byRail.get(rail), 1e-9);
        }
        put(values, mean, Math.pow(product, 1.0 / bench.points().rails().size()));
        if (bench.points().rails().size() == 2) {
            double first = Math.max(byRail.get(bench.points().rails().get(0)), 1e-9);
            double second = Math.max(byRail.get(bench.points().rails().get(1)), 1e-9);
            put(values, difference, first / second);
        }
    }

    private Prediction at(OperatingPoint point, Deviation deviation, double inputVolts) {
        Map<String, Double> loads = new LinkedHashMap<>();
        point.rails()
                .forEach((rail, value) ->
                        loads.put(rail, Math.max(0, value.current().value())));
        return Prediction.of(bench.design(), deviation, inputVolts, loads).orElseThrow();
    }

    private static double volts(OperatingPoint point) {
        return point.input().voltage().value();
    }

    private static void put(Map<String, Double> values, Sign sign, double value) {
        values.put(Symptom.key(sign, Optional.empty()), value);
    }
}
