package railwitness.analysis.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RippleMeans;
import railwitness.analysis.supply.RippleReach;
import railwitness.analysis.uncertainty.Estimate;

/**
 * Takes the signs from points and figures. The tolerances say how well the closed form may be trusted: from its
 * comparison with circuit simulation, and wide where the sheet does not know a part.
 */
final class Symptoms {
    private static final double SAG_TOLERANCE = 0.15;
    private static final double LOAD_LOSS_TOLERANCE = 0.25;
    private static final double RIPPLE_TOLERANCE = 0.3;
    private static final double PAIR_TOLERANCE = 0.1;
    private static final double RATIO_TOLERANCE = 0.004;
    private static final double LEVEL_TOLERANCE = 0.008;
    private static final double AT_CYCLE_TOLERANCE = 0.15;
    private static final double IDLE_SHARE = 0.15;
    private static final double IDLE_LEAST_WATTS = 0.1;
    private static final double UNKNOWN_IDLE_WATTS = 4;
    private static final double SOURCE_LEAST_OHMS = 0.003;
    private static final List<String> RESISTANCES =
            List.of("on_resistance_ohm", "primary_resistance_ohm", "secondary_resistance_ohm", "slope_ohm");
    private static final List<String> IDLE_PARTS = List.of("control_A", "core_loss_W");

    private final Bench bench;
    private final Figures figures;
    private final RippleMeans ripple;
    private final Map<String, Double> healthy;
    private final List<String> leftOut;
    private final List<Symptom> list = new ArrayList<>();

    Symptoms(Bench bench, Figures figures, RippleMeans ripple, Map<String, Double> healthy, List<String> leftOut) {
        this.bench = bench;
        this.figures = figures;
        this.ripple = ripple;
        this.healthy = healthy;
        this.leftOut = leftOut;
    }

    List<Symptom> take(OptionalDouble standbyLimit, OptionalDouble leadOhms) {
        standbyLimit.ifPresent(limit ->
                figures.value(FigureName.STANDBY_CURRENT).ifPresent(value -> add(Sign.STANDBY, value, limit / 4)));
        figures.value(FigureName.NO_LOAD_INPUT_POWER).ifPresent(value -> add(Sign.IDLE, value, idleTolerance()));
        bench.points().rails().forEach(this::ofRail);
        sag();
        loadLoss();
        ripple();
        leadOhms.ifPresent(this::source);
        return List.copyOf(list);
    }

    private void add(Sign sign, Estimate value, double tolerance) {
        addOf(sign, Optional.empty(), value, tolerance);
    }

    private void addOf(Sign sign, Optional<String> rail, Estimate value, double tolerance) {
        if (healthy.containsKey(Symptom.key(sign, rail))) {
            list.add(new Symptom(sign, rail, value, tolerance));
        }
    }

    private double idleTolerance() {
        double expected = healthy.getOrDefault(Symptom.key(Sign.IDLE, Optional.empty()), 0.0);
        long unknown = IDLE_PARTS.stream().filter(leftOut::contains).count();
        return IDLE_SHARE * expected + IDLE_LEAST_WATTS + unknown * UNKNOWN_IDLE_WATTS;
    }

    private void ofRail(String rail) {
        figures.value(FigureName.EFFECTIVE_TURNS_RATIO, rail)
                .ifPresent(value -> addOf(Sign.RATIO, Optional.of(rail), value, RATIO_TOLERANCE));
        if (!bench.design().converter().regulated()) {
            bench.light()
                    .ifPresent(point -> addOf(
                            Sign.LEVEL, Optional.of(rail), Bench.volts(point, rail), levelTolerance(point, rail)));
        }
        ripple.waveforms();
        Optional.ofNullable(ripple.waveforms().get(rail))
                .map(wave -> wave.shareAtCycle())
                .filter(OptionalDouble::isPresent)
                .ifPresent(share -> addOf(
                        Sign.AT_CYCLE, Optional.of(rail), Estimate.exact(share.getAsDouble()), AT_CYCLE_TOLERANCE));
    }

    private double levelTolerance(OperatingPoint point, String rail) {
        double drop =
                leftOut.contains("drop_V") ? 0.7 / Bench.volts(point, rail).value() : 0;
        double sag =
                unknownResistances() ? 0.06 * bench.points().fraction(point).orElse(0) : 0;
        double choke = bench.design().converter().filter() == FilterInput.CHOKE ? 0.03 : 0;
        return LEVEL_TOLERANCE + drop + sag + choke;
    }

    private boolean unknownResistances() {
        return RESISTANCES.stream().anyMatch(leftOut::contains);
    }

    private void sag() {
        if (!bench.sags() || bench.design().rails().stream().anyMatch(bench.design()::regulates)) {
            return;
        }
        List<Estimate> ohms =
                bench.points().rails().stream().map(this::heldOhms).toList();
        if (ohms.stream().anyMatch(value -> value.value() <= 0)) {
            return;
        }
        if (!unknownResistances()) {
            add(Sign.SAG, geometricMean(ohms), SAG_TOLERANCE);
        }
        if (ohms.size() == 2) {
            add(Sign.SAG_DIFFERENCE, ohms.get(0).over(ohms.get(1)), PAIR_TOLERANCE);
        }
    }

    /** Fall per ampere with the input's own sag taken out by the measured slope, else the design's. */
    private Estimate heldOhms(String rail) {
        OperatingPoint light = bench.light().orElseThrow();
        OperatingPoint heavy = bench.heavy().orElseThrow();
        Estimate slope = figures.value(FigureName.STEP_UP_SLOPE, rail).orElse(Estimate.exact(bench.slope()));
        Estimate inputSag = light.input().voltage().minus(heavy.input().voltage());
        Estimate fall = Bench.volts(light, rail).minus(Bench.volts(heavy, rail)).minus(slope.times(inputSag));
        return fall.over(Bench.amperes(heavy, rail).minus(Bench.amperes(light, rail)));
    }

    private static Estimate geometricMean(List<Estimate> values) {
        double log = 0;
        for (Estimate value : values) {
            log += Math.log(value.value());
        }
        double mean = Math.exp(log / values.size());
        double[] sensitivities = values.stream()
                .mapToDouble(value -> mean / values.size() / value.value())
                .toArray();
        return Estimate.propagate(mean, values, sensitivities);
    }

    private void loadLoss() {
        if (bench.idle().isEmpty() || bench.heavy().isEmpty() || unknownResistances() || !bench.sags()) {
            return;
        }
        Estimate added =
                bench.heavy().get().loss().minus(bench.idle().get().input().power());
        if (added.value() > 0) {
            add(Sign.LOAD_LOSS, added, LOAD_LOSS_TOLERANCE);
        }
    }

    private void ripple() {
        if (bench.heavy().isEmpty()) {
            return;
        }
        List<Estimate> read = bench.points().rails().stream()
                .flatMap(rail -> readable(rail).stream())
                .toList();
        if (read.size() < bench.points().rails().size()) {
            return;
        }
        if (!leftOut.contains("capacitor_esr_ohm")) {
            add(Sign.RIPPLE, geometricMean(read), RIPPLE_TOLERANCE);
        }
        if (read.size() == 2) {
            add(Sign.RIPPLE_DIFFERENCE, read.get(0).over(read.get(1)), PAIR_TOLERANCE);
        }
    }

    private Optional<Estimate> readable(String rail) {
        RippleReach reach = RippleReach.of(
                Optional.ofNullable(ripple.bands().get(rail)),
                bench.design().converter().frequencyHz());
        return bench.heavy()
                .orElseThrow()
                .rails()
                .get(rail)
                .rippleRms()
                .filter(value -> value.value() > 0 && reach != RippleReach.BELOW);
    }

    /** Resistance from the source to the terminals: what the terminals lose of the set voltage per ampere. */
    private void source(double leadOhms) {
        if (!bench.sags()) {
            return;
        }
        OperatingPoint light = bench.light().orElseThrow();
        OperatingPoint heavy = bench.heavy().orElseThrow();
        if (light.setVolts().isEmpty() || heavy.setVolts().isEmpty()) {
            return;
        }
        double set = heavy.setVolts().getAsDouble() - light.setVolts().getAsDouble();
        Estimate lost = light.input().voltage().minus(heavy.input().voltage()).plus(set);
        Estimate ohms = lost.over(heavy.input().current().minus(light.input().current()));
        add(Sign.SOURCE, ohms, SOURCE_LEAST_OHMS + 0.15 * leadOhms);
    }
}
