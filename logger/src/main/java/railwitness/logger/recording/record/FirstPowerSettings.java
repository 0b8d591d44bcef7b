package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Filter;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.plan.PowerUp;
import railwitness.safety.power.FirstPowerBounds;
import railwitness.safety.power.RailTarget;
import railwitness.safety.power.Settings;

/** From the sheets to the plain numbers with which a supply is armed and a unit powered for the first time. */
final class FirstPowerSettings {
    /** Touch limit where the sheet states none, V: far below the 60 V of IEC 62368-1 (common practice, no source). */
    private static final double TOUCH_VOLTS = 12;

    private static final double RESOLUTION_VOLTS = 0.03;
    private static final double RESOLUTION_AMPS = 0.1;
    private static final int STEPS = 4;
    private static final Duration SOFT_START = Duration.ofSeconds(2);
    private static final double NO_LOAD_MARGIN = 3;
    /** Where the losses are not known the idle current stays clear of the power-up limit, so that limiting is told. */
    private static final double UNKNOWN_SHARE = 0.9;

    private static final double WINDING_VOLTS = 2;
    private static final double WINDING_OVER_VOLTAGE = 2;
    private static final double WINDING_OVER_CURRENT = 1.3;

    private static final double CONTRADICTS = 0.4;

    private FirstPowerSettings() {}

    /** A rail below this counts as discharged, V. */
    static double touchVolts(Design design) {
        return design.limits().touchVolts().orElse(TOUCH_VOLTS);
    }

    static Settings arming(Bench bench, RunLimits limits, Plan plan, Design design) {
        Supply supply = bench.supply().instrument();
        // without a remote turn-on line there is one step only: nobody turns a knob twice
        double first = supply.isSetByHand()
                ? design.input().nominalVolts()
                : steps(design).get(0);
        return new Settings(
                bench.sheet().source(),
                Math.min(first, limits.highestInputVolts()),
                limits.highestInputVolts(),
                inrushLimit(plan, limits),
                limits.overVoltageVolts(),
                limits.overCurrentAmps(),
                Math.max(RESOLUTION_VOLTS, supply.resolutionVolts().orElse(0)),
                Math.max(RESOLUTION_AMPS, supply.resolutionAmps().orElse(0)),
                bench.sheet().acceptedWithoutProtection());
    }

    /**
     * For direct current through a winding. The current limit holds; the voltage stays far below what a hand feels.
     *
     * @param amps wanted; less where the supply gives less
     */
    static Settings winding(Bench bench, double amps) {
        Supply supply = bench.supply().instrument();
        double limit = Math.min(amps, supply.highestAmps().orElse(amps));
        double volts = Math.min(WINDING_VOLTS, supply.highestVolts().orElse(WINDING_VOLTS));
        return new Settings(
                bench.sheet().source(),
                volts,
                volts,
                limit,
                volts * WINDING_OVER_VOLTAGE,
                limit * WINDING_OVER_CURRENT,
                Math.max(RESOLUTION_VOLTS, supply.resolutionVolts().orElse(0)),
                Math.max(
                        Math.min(RESOLUTION_AMPS, limit / 4),
                        supply.resolutionAmps().orElse(0)),
                bench.sheet().acceptedWithoutProtection());
    }

    /** @param slackAmps by what the meter of the input current may be off at next to nothing, where a person reads it */
    static FirstPowerBounds bounds(Design design, Plan plan, RunLimits limits, boolean hasRemote, double slackAmps) {
        double working = design.input().nominalVolts();
        double inrush = inrushLimit(plan, limits);
        double remoteOff = design.limits().standbyAmperes().orElse(inrush / 20) + slackAmps;
        OptionalDouble noLoad = noLoadAmps(design);
        return new FirstPowerBounds(
                hasRemote ? steps(design) : List.of(),
                inrush,
                Math.min(remoteOff, inrush),
                design.limits().standbyAmperes().isPresent(),
                design.input().capacitorMicrofarads().orElse(0) * 1e-6,
                working,
                Math.min(design.converter().startVolts().orElse(0), working),
                inrush,
                storedJoules(design),
                SOFT_START,
                Math.min(noLoad.isPresent() ? noLoad.getAsDouble() + slackAmps : UNKNOWN_SHARE * inrush, inrush),
                noLoad.isPresent());
    }

    /**
     * What the unit may draw without load: as the sheet states it, or a multiple of what its losses predict; empty where
     * a part of these losses is not on the sheet. Then only the limit of power-up bounds it.
     */
    private static OptionalDouble noLoadAmps(Design design) {
        OptionalDouble stated = design.limits().noLoadInputAmperes();
        return stated.isPresent()
                ? stated
                : Prediction.of(design, design.input().nominalVolts(), Map.of())
                        .map(Prediction::inputCurrent)
                        .filter(OptionalDouble::isPresent)
                        .map(idle -> OptionalDouble.of(NO_LOAD_MARGIN * idle.getAsDouble()))
                        .orElse(OptionalDouble.empty());
    }

    /** What the rails that instruments read should stand at without load, at the working voltage. */
    static List<RailTarget> targets(Design design, List<Channel> watched) {
        Optional<Prediction> prediction = Prediction.of(design, design.input().nominalVolts(), Map.of());
        return watched.stream()
                .map(channel -> target(design, design.rail(channel.node()).orElseThrow(), channel, prediction))
                .toList();
    }

    /** Turns that contradict the nominal predict nothing. */
    private static RailTarget target(Design design, Rail rail, Channel channel, Optional<Prediction> prediction) {
        double nominal = rail.nominalVolts();
        Optional<Double> volts = prediction
                .map(predicted -> predicted.railVolts().get(rail.name()))
                .filter(value -> Math.abs(value / nominal - 1) <= CONTRADICTS);
        boolean choke = design.converter().filter() == FilterInput.CHOKE
                && !design.converter().regulated();
        return volts.map(value -> RailTarget.predicted(channel, value, choke ? peak(design) : 0))
                .orElse(RailTarget.nominal(channel, nominal));
    }

    /** A choke carries no current without load: the rail then follows the winding's peak. */
    private static double peak(Design design) {
        return Prediction.highestNoLoadRailVolts(design).orElse(0);
    }

    /** Four equal steps up to the working voltage; with the remote turn-on off nothing runs at any of them. */
    private static List<Double> steps(Design design) {
        List<Double> steps = new ArrayList<>();
        for (int i = 1; i <= STEPS; i++) {
            steps.add(Math.round(design.input().nominalVolts() * 100 * i / STEPS) / 100.0);
        }
        return steps;
    }

    private static double inrushLimit(Plan plan, RunLimits limits) {
        return Math.min(
                plan.powerUp().map(PowerUp::currentLimitAmps).orElse(limits.workingAmps() / 4), limits.workingAmps());
    }

    /** Energy of all filter capacitors at the highest no-load voltage, C V^2 / 2 each, J. */
    private static double storedJoules(Design design) {
        Optional<Filter> filter = design.filter();
        double farads = filter.isPresent() ? filter.get().capacitorMicrofarads().orElse(10_000) * 1e-6 : 0.01;
        double volts = Prediction.highestNoLoadRailVolts(design)
                .orElse(Math.abs(design.rails().get(0).nominalVolts()) * 1.2);
        return design.rails().size() * farads * volts * volts / 2;
    }
}
