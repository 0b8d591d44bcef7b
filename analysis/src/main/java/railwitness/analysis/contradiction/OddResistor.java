package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.analysis.design.Prediction;

/**
 * A resistor that was typed and is not the one that was switched in, where no meter reads its current: at that step alone
 * the input takes another power than the sheet leads to expect, and the rail lies where it would with another current.
 */
final class OddResistor {
    /** How far the sheet's expectation may be off at one step and not at its neighbours, of the input's power. */
    private static final double SHARE = 0.06;

    /** How much more than with its square a loss may grow from one step to the next (common practice, no source). */
    private static final double GROWTH = 2;

    /** Steps that take less than this share of the power say nothing of how a loss grows. */
    private static final double NEIGHBOUR = 0.6;

    private static final int LEAST_STEPS = 3;

    private final Evidence evidence;
    private final Doubt doubt;

    OddResistor(Evidence evidence) {
        this.evidence = evidence;
        this.doubt = new Doubt(evidence);
    }

    List<Contradiction> find() {
        List<Contradiction> found = new ArrayList<>();
        evidence.rails.forEach(rail -> find(rail).ifPresent(found::add));
        return found;
    }

    private Optional<Contradiction> find(String rail) {
        List<Testimony> loaded = evidence.steps.stream()
                .filter(step -> evidence.allUp(step)
                        && Evidence.outWatts(step) > 1
                        && surplus(step).isPresent())
                .toList();
        if (loaded.size() < LEAST_STEPS) {
            return Optional.empty();
        }
        return loaded.stream()
                .filter(step -> step.resistorAmps().containsKey(rail)
                        && step.mean(rail + ".current").isEmpty())
                .filter(step -> isOdd(step, loaded) && fitsAnother(step, rail))
                .findFirst()
                .map(step -> contradiction(step, rail));
    }

    private Contradiction contradiction(Testimony step, String rail) {
        double typed = step.point().rail(rail).orElseThrow().current().value();
        return new Contradiction(
                ContradictionCode.INSTRUMENTS_DISAGREE,
                "the " + rail + " resistor that was typed would draw " + Evidence.amps(typed)
                        + "; the input and the rail are as with about " + Evidence.amps(drawn(step, rail)) + " ("
                        + step.where() + ")",
                "which resistor was switched in at that step; measure it, and take the step again",
                Set.of(rail + ".current"));
    }

    /** Power at the input beyond what the sheet expects, W. */
    private OptionalDouble surplus(Testimony step) {
        return doubt.prediction(step)
                .map(expected -> OptionalDouble.of(watts(step)
                        - expected.inputAmperes()
                                * step.point().input().voltage().value()))
                .orElse(OptionalDouble.empty());
    }

    private static double watts(Testimony step) {
        return step.point().input().power().value();
    }

    private boolean isOdd(Testimony step, List<Testimony> all) {
        double own = surplus(step).orElseThrow();
        double usual = all.stream()
                .filter(other -> other != step)
                .mapToDouble(other -> grown(Math.signum(own) * surplus(other).orElseThrow(), other, step))
                .max()
                .orElse(Double.POSITIVE_INFINITY);
        double honest = Evidence.honest(step.point().input().power(), watts(step), 0);
        return Math.abs(own) > SHARE * watts(step) + honest + GROWTH * Math.max(0, usual);
    }

    private static double grown(double surplus, Testimony from, Testimony to) {
        double growth = watts(to) / watts(from);
        return surplus * (watts(from) >= NEIGHBOUR * watts(to) ? Math.max(1, growth * growth) : 1);
    }

    /** The current that would account for the input's power, A, as the unit turns it into the rail's. */
    private double drawn(Testimony step, String rail) {
        var at = step.point().rail(rail).orElseThrow();
        double share = Math.min(1, expectedEfficiency(step));
        return Math.max(
                0,
                at.current().value()
                        + share
                                * surplus(step).orElseThrow()
                                / Math.abs(at.voltage().value()));
    }

    private double expectedEfficiency(Testimony step) {
        Prediction expected = doubt.prediction(step).orElseThrow();
        return expected.outputWatts() / (expected.inputAmperes() * expected.inputVolts());
    }

    /** Whether the rail lies nearer to where that other current would bring it. */
    private boolean fitsAnother(Testimony step, String rail) {
        double volts = Math.abs(step.point().rail(rail).orElseThrow().voltage().value());
        double typed = step.point().rail(rail).orElseThrow().current().value();
        OptionalDouble asTyped = railVolts(step, rail, typed);
        OptionalDouble asDrawn = railVolts(step, rail, drawn(step, rail));
        return asTyped.isPresent()
                && asDrawn.isPresent()
                && Math.abs(volts - asDrawn.getAsDouble()) < Math.abs(volts - asTyped.getAsDouble());
    }

    private OptionalDouble railVolts(Testimony step, String rail, double amps) {
        Map<String, Double> loads = new HashMap<>();
        step.point().rails().forEach((name, at) -> loads.put(name, at.current().value()));
        loads.put(rail, amps);
        return Prediction.of(
                        evidence.design.orElseThrow(),
                        step.point().input().voltage().value(),
                        loads)
                .map(expected -> expected.rail(rail))
                .filter(OptionalDouble::isPresent)
                .map(volts -> OptionalDouble.of(Math.abs(volts.getAsDouble())))
                .orElse(OptionalDouble.empty());
    }
}
