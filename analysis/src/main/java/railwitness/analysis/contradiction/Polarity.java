package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import railwitness.analysis.design.Rail;

/** Rails, and the currents of their loads, that have the wrong sign. */
final class Polarity {
    /** A rail that has given up may be pulled this far beyond zero through what still is on, V. */
    private static final double PULLED_VOLTS = 2;

    /** ... or this share of what it should be. */
    private static final double PULLED_SHARE = 0.1;

    private static final double ZERO_AMPS = 0.02;
    private static final double ZERO_SHARE = 0.02;

    private final Evidence evidence;

    Polarity(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Contradiction> find() {
        List<Contradiction> found = new ArrayList<>();
        evidence.rails.forEach(rail -> voltage(rail, found));
        evidence.rails.forEach(rail -> current(rail, found));
        return found;
    }

    /** Whether the voltage of that rail was read with the wrong sign. */
    boolean wrong(String rail) {
        return !wrongSteps(rail).isEmpty();
    }

    private List<Testimony> wrongSteps(String rail) {
        String channel = rail + ".voltage";
        double sign = evidence.sign(rail).orElse(0);
        double nominal = evidence.design
                .flatMap(sheet -> sheet.rail(rail))
                .map(Rail::nominalVolts)
                .map(Math::abs)
                .orElse(evidence.most(channel));
        double pulled = Math.max(PULLED_VOLTS, PULLED_SHARE * nominal);
        return evidence.steps.stream()
                .filter(step -> step.value(channel).isPresent())
                .filter(step -> -sign * step.value(channel).getAsDouble() > pulled + evidence.honest(step, channel))
                .toList();
    }

    private void voltage(String rail, List<Contradiction> found) {
        List<Testimony> wrong = wrongSteps(rail);
        if (wrong.isEmpty()) {
            return;
        }
        String channel = rail + ".voltage";
        double volts = wrong.stream()
                .mapToDouble(step -> step.value(channel).getAsDouble())
                .reduce(0, (a, b) -> Math.abs(b) > Math.abs(a) ? b : a);
        found.add(new Contradiction(
                ContradictionCode.POLARITY,
                "the " + rail + " rail reads " + Evidence.volts(volts) + ", a rail of the wrong sign ("
                        + Evidence.at(wrong) + ")",
                "switch off; whether the " + rail + " meter's leads are reversed or on the other rail; whether the"
                        + " rectifier of the " + rail + " rail is the right way round",
                Set.of(channel)));
    }

    /** The current of a load has the sign of its rail, or is always given as a magnitude. */
    private void current(String rail, List<Contradiction> found) {
        String channel = rail + ".current";
        double sign = evidence.sign(rail).orElse(1);
        double zero = Math.max(ZERO_AMPS, ZERO_SHARE * evidence.most(channel));
        List<Testimony> read = evidence.steps.stream()
                .filter(step -> step.value(channel).isPresent())
                .toList();
        List<Testimony> below = read.stream()
                .filter(step -> step.value(channel).getAsDouble() < -zero - evidence.honest(step, channel))
                .toList();
        boolean above = read.stream()
                .anyMatch(step -> step.value(channel).getAsDouble() > zero + evidence.honest(step, channel));
        if (below.isEmpty() || (sign < 0 && !above)) {
            return;
        }
        double amps = below.get(0).value(channel).getAsDouble();
        found.add(new Contradiction(
                ContradictionCode.POLARITY,
                "the " + rail + " load's current reads " + Evidence.amps(amps) + ": a load does not feed the rail ("
                        + Evidence.at(below) + ")",
                "whether the leads of the " + rail + " shunt are reversed, or the clamp is the wrong way round",
                Set.of(channel)));
    }
}
