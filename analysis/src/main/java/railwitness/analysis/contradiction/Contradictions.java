package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.design.Design;

/** Asks every witness of a session. */
public final class Contradictions {
    /** Readings within this share of what the sheet leads to expect are not the first to be doubted. */
    private static final double AS_EXPECTED = 0.05;

    private Contradictions() {}

    /**
     * All that cannot be, the gravest kind first; empty for readings that can all be true.
     *
     * @param design tells the rails' signs and what may be expected, where it is there
     */
    public static List<Contradiction> of(Optional<Design> design, Witnesses witnesses) {
        Evidence evidence = new Evidence(design, witnesses);
        Polarity polarity = new Polarity(evidence);
        List<Contradiction> found = new ArrayList<>(polarity.find());
        found.addAll(new NegativeInput(evidence).find());
        found.addAll(new Exchange(evidence, polarity).find());
        found.addAll(new Frozen(evidence).find());
        found.addAll(new Scattered(evidence).find());
        Set<String> explained = new HashSet<>();
        found.forEach(one -> explained.addAll(one.doubted()));
        Disagreement disagreement = new Disagreement(evidence);
        disagreement.find().stream()
                .filter(one -> !explained.containsAll(one.doubted()))
                .forEach(found::add);
        found.addAll(new OddResistor(evidence).find());
        Doubt doubt = new Doubt(evidence);
        found.addAll(new PowerBalance(
                        evidence,
                        channel -> !explained.contains(channel)
                                && (disagreement.vouched(channel) || asExpected(evidence, doubt, channel)))
                .find());
        found.sort(Comparator.comparing(Contradiction::code));
        return List.copyOf(found);
    }

    /** A rail that lies where the sheet expects it, in every step under load, is not the first to be doubted. */
    private static boolean asExpected(Evidence evidence, Doubt doubt, String channel) {
        if (!channel.endsWith(".voltage") || channel.startsWith("input")) {
            return false;
        }
        String rail = Evidence.rail(channel);
        List<Testimony> loaded = evidence.steps.stream()
                .filter(step -> evidence.isUp(step, rail) && Evidence.outWatts(step) > 1)
                .toList();
        return !loaded.isEmpty()
                && loaded.stream().allMatch(step -> doubt.prediction(step)
                        .map(prediction -> prediction.railVolts().get(rail))
                        .filter(volts ->
                                Math.abs(volts - step.value(channel).getAsDouble()) <= AS_EXPECTED * Math.abs(volts))
                        .isPresent());
    }
}
