package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.analysis.uncertainty.Estimate;

/** Two that see one thing: what they agree on is vouched for, what they do not is named with the one to doubt. */
final class Disagreement {
    /** Zero of a load and of a read-back, as a share of the largest (common practice, no source). */
    private static final double TARE = 0.01;

    private static final double TARE_AMPS = 0.03;

    /** Set point of a load beyond its own reading's accuracy (common practice, no source). */
    private static final double SETTING = 0.01;

    /** Set point of a supply against what comes out of it. */
    private static final double SUPPLY_SETTING = 0.02;

    /** Set point of a supply against a meter somewhere else. */
    private static final double AT_TERMINALS = 0.03;

    /** More than leads and clamps ever have while they still carry a unit, ohm. */
    private static final double BAD_LEADS_OHMS = 0.25;

    /** Leads between a rail's meter and its load, ohm. */
    private static final double LOAD_LEADS_OHMS = 0.2;

    private static final double UNSETTLED = 0.02;

    private final Evidence evidence;
    private final Doubt doubt;
    private final List<Contradiction> found = new ArrayList<>();
    private final Set<String> compared = new HashSet<>();
    private final Set<String> disagreed = new HashSet<>();

    Disagreement(Evidence evidence) {
        this.evidence = evidence;
        this.doubt = new Doubt(evidence);
        if (evidence.witnesses.soleSource()) {
            inputCurrent();
            inputVoltage();
        }
        evidence.rails.forEach(this::setPoint);
        evidence.rails.forEach(this::resistor);
        evidence.rails.forEach(this::loadsVoltage);
        evidence.rails.forEach(this::power);
        power("input");
    }

    List<Contradiction> find() {
        return found;
    }

    /** Whether a second witness confirms a channel. */
    boolean vouched(String channel) {
        return compared.contains(channel) && !disagreed.contains(channel);
    }

    private void inputCurrent() {
        List<Testimony> apart = new ArrayList<>();
        double most = Math.max(evidence.most(Evidence.INPUT_AMPS), evidence.most(Evidence.SUPPLY_AMPS));
        for (Testimony step : evidence.steps) {
            Optional<Estimate> meter = step.mean(Evidence.INPUT_AMPS);
            Optional<Estimate> supply = step.mean(Evidence.SUPPLY_AMPS);
            if (meter.isPresent() && supply.isPresent()) {
                double size = Math.max(
                        Math.abs(meter.get().value()), Math.abs(supply.get().value()));
                Estimate difference = supply.get().minus(meter.get());
                double allowed = Evidence.honest(difference, size, most) + loose(step, size) + TARE / 5 * most;
                compare(step, Evidence.INPUT_AMPS, Math.abs(difference.value()) - allowed, size > most / 2, apart);
            }
        }
        if (!apart.isEmpty()) {
            Testimony worst = largest(apart, Evidence.INPUT_AMPS);
            boolean meterWrong = doubt.inputMeter(worst);
            disagree(
                    Evidence.INPUT_AMPS,
                    "input meter and supply see different currents: "
                            + Evidence.amps(worst.value(Evidence.INPUT_AMPS).getAsDouble()) + " and "
                            + Evidence.amps(worst.value(Evidence.SUPPLY_AMPS).getAsDouble()) + " ("
                            + Evidence.at(apart) + ")",
                    meterWrong
                            ? "doubt the input meter: the shunt's value on the bench sheet, its leads, its channel"
                            : "doubt the supply's own reading: compare both with a clamp");
        }
    }

    /** The terminals lie below the supply by the drop of the leads, and never above. */
    private void inputVoltage() {
        List<Testimony> apart = new ArrayList<>();
        boolean readBack = evidence.most(Evidence.SUPPLY_VOLTS) > 0;
        for (Testimony step : evidence.steps) {
            Optional<Estimate> meter = step.mean(Evidence.INPUT_VOLTS);
            if (meter.isPresent()
                    && readBack
                    && step.mean(Evidence.SUPPLY_VOLTS).isPresent()) {
                Estimate supply = step.mean(Evidence.SUPPLY_VOLTS).orElseThrow();
                drop(step, supply.minus(meter.get()), supply.value(), 0, apart);
            } else if (meter.isPresent() && !readBack && set(step).isPresent()) {
                double set = set(step).getAsDouble();
                drop(step, meter.get().negate().plus(set), set, AT_TERMINALS * set, apart);
            }
        }
        if (!apart.isEmpty()) {
            Testimony worst = largest(apart, Evidence.INPUT_VOLTS);
            double other = readBack
                    ? worst.value(Evidence.SUPPLY_VOLTS).getAsDouble()
                    : set(worst).getAsDouble();
            boolean supplyRight =
                    !readBack || set(worst).isEmpty() || near(other, set(worst).getAsDouble());
            disagree(
                    Evidence.INPUT_VOLTS,
                    "the input meter reads "
                            + Evidence.volts(worst.value(Evidence.INPUT_VOLTS).getAsDouble())
                            + (readBack ? ", the supply " : ", the supply is set to ") + Evidence.volts(other)
                            + ": more apart than leads and accuracies allow (" + Evidence.at(apart) + ")",
                    supplyRight
                            ? "doubt the input meter: its leads at the unit's terminals, its channel, its range"
                            : "doubt the supply's own reading: its sense leads");
        }
    }

    private static boolean near(double volts, double set) {
        return Math.abs(volts - set) <= SUPPLY_SETTING * set;
    }

    private void drop(Testimony step, Estimate drop, double volts, double more, List<Testimony> apart) {
        double allowed = Evidence.honest(drop, volts, volts) + loose(step, volts) + more;
        double amps = Math.max(
                step.value(Evidence.INPUT_AMPS).orElse(0),
                step.value(Evidence.SUPPLY_AMPS).orElse(0));
        double above = -drop.value() - allowed;
        double below = drop.value() - allowed - BAD_LEADS_OHMS * Math.max(0, amps);
        compare(step, Evidence.INPUT_VOLTS, Math.max(above, below), true, apart);
    }

    private static OptionalDouble set(Testimony step) {
        return step.point().setVolts();
    }

    private void setPoint(String rail) {
        String channel = rail + ".current";
        List<Testimony> apart = new ArrayList<>();
        double most = evidence.steps.stream()
                .flatMap(step -> Optional.ofNullable(step.setAmps().get(rail)).stream())
                .max(Double::compare)
                .orElse(0.0);
        for (Testimony step : evidence.steps) {
            Double set = step.setAmps().get(rail);
            if (set == null || step.mean(channel).isEmpty() || (set > 0 && !evidence.isUp(step, rail))) {
                continue;
            }
            Estimate mean = step.mean(channel).orElseThrow();
            double amps = Math.abs(mean.value());
            double allowed = 2 * Evidence.honest(mean, Math.max(set, amps), 0)
                    + SETTING * set
                    + Math.max(TARE_AMPS, TARE * most)
                    + loose(step, set);
            compare(step, channel, Math.abs(amps - set) - allowed, set > most / 2, apart);
        }
        if (apart.isEmpty()) {
            new SameSetting(evidence, rail).find().ifPresent(odd -> disagree(channel, odd.text(), odd.check()));
        } else {
            Testimony worst = largest(apart, channel);
            disagree(
                    channel,
                    "the " + rail + " load is set to "
                            + Evidence.amps(worst.setAmps().get(rail))
                            + ", its current reads "
                            + Evidence.amps(Math.abs(worst.value(channel).getAsDouble())) + " (" + Evidence.at(apart)
                            + ")",
                    "doubt the reading of the " + rail + " current: shunt, channel, load's own calibration");
        }
    }

    private void resistor(String rail) {
        String channel = rail + ".current";
        List<Testimony> apart = new ArrayList<>();
        for (Testimony step : evidence.steps) {
            Estimate expected = step.resistorAmps().get(rail);
            if (expected == null || step.mean(channel).isEmpty()) {
                continue;
            }
            Estimate difference = step.mean(channel).orElseThrow().abs().minus(expected);
            double size = expected.value();
            double allowed = Evidence.honest(difference, size, size) + loose(step, size) + TARE * size;
            compare(step, channel, Math.abs(difference.value()) - allowed, true, apart);
        }
        if (!apart.isEmpty()) {
            Testimony worst = largest(apart, channel);
            disagree(
                    channel,
                    "the " + rail + " resistor would draw "
                            + Evidence.amps(worst.resistorAmps().get(rail).value()) + ", the meter reads "
                            + Evidence.amps(Math.abs(worst.value(channel).getAsDouble())) + " (" + Evidence.at(apart)
                            + ")",
                    "doubt the resistor: which one is switched in, measure it; then the " + rail + " shunt");
        }
    }

    private void loadsVoltage(String rail) {
        String channel = rail + ".voltage";
        String own = rail + "-load.voltage";
        List<Testimony> apart = new ArrayList<>();
        for (Testimony step : evidence.steps) {
            if (step.mean(channel).isEmpty() || step.mean(own).isEmpty()) {
                continue;
            }
            Estimate meter = step.mean(channel).orElseThrow().abs();
            Estimate drop = meter.minus(step.mean(own).orElseThrow().abs());
            double amps = step.value(rail + ".current").orElse(0);
            double allowed = Evidence.honest(drop, meter.value(), evidence.most(channel)) + loose(step, meter.value());
            double beyond =
                    Math.max(-drop.value() - allowed, drop.value() - allowed - LOAD_LEADS_OHMS * Math.abs(amps));
            compare(step, channel, beyond, evidence.isUp(step, rail), apart);
        }
        if (!apart.isEmpty()) {
            Testimony worst = largest(apart, channel);
            boolean meterWrong = doubt.railMeter(worst, rail, own);
            disagree(
                    channel,
                    "the " + rail + " meter reads "
                            + Evidence.volts(Math.abs(worst.value(channel).getAsDouble())) + ", the load on it "
                            + Evidence.volts(Math.abs(worst.value(own).getAsDouble())) + " (" + Evidence.at(apart)
                            + ")",
                    meterWrong
                            ? "doubt the " + rail + " meter: its leads, its channel, its range"
                            : "doubt the load's own reading: its sense leads and clamps");
        }
    }

    /** A meter of power against the product of voltage and current. */
    private void power(String node) {
        List<Testimony> apart = new ArrayList<>();
        double most = evidence.most(node + ".power");
        for (Testimony step : evidence.steps) {
            Optional<Estimate> volts = step.mean(node + ".voltage");
            Optional<Estimate> amps = step.mean(node + ".current");
            Optional<Estimate> power = step.mean(node + ".power");
            if (volts.isPresent() && amps.isPresent() && power.isPresent()) {
                Estimate difference =
                        power.get().abs().minus(volts.get().times(amps.get()).abs());
                double size = Math.abs(power.get().value());
                double allowed = Evidence.honest(difference, size, most) + loose(step, size) + TARE / 2 * most;
                compare(step, node + ".power", Math.abs(difference.value()) - allowed, false, apart);
            }
        }
        if (!apart.isEmpty()) {
            Testimony worst = apart.get(0);
            disagreed.add(node + ".voltage");
            disagreed.add(node + ".current");
            found.add(new Contradiction(
                    ContradictionCode.INSTRUMENTS_DISAGREE,
                    "the " + node + " power reads "
                            + Evidence.watts(worst.value(node + ".power").getAsDouble())
                            + ", voltage times current give "
                            + Evidence.watts(worst.value(node + ".voltage").getAsDouble()
                                    * worst.value(node + ".current").getAsDouble())
                            + " (" + Evidence.at(apart) + ")",
                    "doubt the power reading first: its range and its wiring; then the " + node + " shunt",
                    Set.of(node + ".voltage", node + ".current")));
        }
    }

    private static double loose(Testimony step, double size) {
        return step.point().settled() ? 0 : UNSETTLED * Math.abs(size);
    }

    /** @param weighty whether an agreement at this step says something */
    private void compare(Testimony step, String channel, double beyond, boolean weighty, List<Testimony> apart) {
        if (beyond > 0) {
            apart.add(step);
        } else if (weighty) {
            compared.add(channel);
        }
    }

    private static Testimony largest(List<Testimony> apart, String channel) {
        return apart.stream()
                .max(java.util.Comparator.comparingDouble(
                        step -> Math.abs(step.value(channel).getAsDouble())))
                .orElseThrow();
    }

    private void disagree(String channel, String text, String check) {
        disagreed.add(channel);
        found.add(new Contradiction(ContradictionCode.INSTRUMENTS_DISAGREE, text, check, Set.of(channel)));
    }
}
