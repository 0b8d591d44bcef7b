package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Input voltage or current below zero: the unit would feed the supply. */
final class NegativeInput {
    /** An instrument's zero may be off by this share of the largest it read. */
    private static final double ZERO_SHARE = 0.005;

    private final Evidence evidence;

    NegativeInput(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Contradiction> find() {
        List<Contradiction> found = new ArrayList<>();
        one(
                Evidence.INPUT_AMPS,
                "A",
                "the leads of the input shunt are reversed, or the clamp is the wrong way round",
                found);
        one(Evidence.INPUT_VOLTS, "V", "the input meter's leads are reversed", found);
        one(Evidence.SUPPLY_AMPS, "A", "the supply's reading is right: compare it with a clamp", found);
        one(Evidence.SUPPLY_VOLTS, "V", "the supply's sense leads are reversed", found);
        return found;
    }

    private void one(String channel, String unit, String check, List<Contradiction> found) {
        double zero = ZERO_SHARE * evidence.most(channel);
        List<Testimony> below = evidence.steps.stream()
                .filter(step -> step.value(channel).isPresent())
                .filter(step -> step.value(channel).getAsDouble() < -zero - evidence.honest(step, channel))
                .toList();
        if (below.isEmpty()) {
            return;
        }
        double lowest = below.stream()
                .mapToDouble(step -> step.value(channel).getAsDouble())
                .min()
                .orElseThrow();
        found.add(new Contradiction(
                ContradictionCode.NEGATIVE_INPUT,
                "the " + Evidence.words(channel) + " reads " + Evidence.number(lowest) + " " + unit
                        + ": the unit would feed the supply (" + Evidence.at(below) + ")",
                "whether " + check,
                Set.of(evidence.used(channel))));
    }
}
