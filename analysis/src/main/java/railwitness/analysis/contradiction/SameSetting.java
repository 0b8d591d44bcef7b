package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Reach;

/**
 * A load that is set the same at several steps draws the same at each of them: what load and meter are off by, they are off
 * by every time. A step whose current differs from the others' was misread.
 */
final class SameSetting {
    /** How well a load comes back to a current, whatever its voltage (common practice, no source). */
    private static final double REPEATED = 0.004;

    /** The same beside its range. */
    private static final double REPEATED_ZERO = 0.001;

    private static final int LEAST_STEPS = 3;

    private final Evidence evidence;
    private final String rail;
    private final String channel;

    SameSetting(Evidence evidence, String rail) {
        this.evidence = evidence;
        this.rail = rail;
        this.channel = rail + ".current";
    }

    /** @param check what to look at */
    record Odd(String text, String check) {}

    /** The steps that differ, where there are any. */
    Optional<Odd> find() {
        TreeMap<Double, List<Testimony>> bySetting = new TreeMap<>();
        evidence.steps.stream().filter(this::says).forEach(step -> bySetting
                .computeIfAbsent(step.setAmps().get(rail), set -> new ArrayList<>())
                .add(step));
        for (var same : bySetting.entrySet()) {
            Optional<Odd> odd =
                    same.getValue().size() < LEAST_STEPS ? Optional.empty() : odd(same.getKey(), same.getValue());
            if (odd.isPresent()) {
                return odd;
            }
        }
        return Optional.empty();
    }

    private boolean says(Testimony step) {
        Double set = step.setAmps().get(rail);
        return set != null
                && set > 0
                && step.point().settled()
                && step.mean(channel).isPresent()
                && evidence.isUp(step, rail);
    }

    private Optional<Odd> odd(double set, List<Testimony> same) {
        List<Testimony> sorted = same.stream()
                .sorted(Comparator.comparingDouble(step -> step.value(channel).orElseThrow()))
                .toList();
        Testimony middle = sorted.get(sorted.size() / 2);
        List<Testimony> apart =
                same.stream().filter(step -> beyond(step, middle, set) > 0).toList();
        return apart.stream()
                .max(Comparator.comparingDouble(step -> beyond(step, middle, set)))
                .map(worst -> new Odd(
                        "the " + rail + " load is set to " + Evidence.amps(set) + " at " + same.size()
                                + " steps; its current reads "
                                + Evidence.amps(Math.abs(worst.value(channel).orElseThrow())) + " at "
                                + Evidence.at(apart) + " and "
                                + Evidence.amps(Math.abs(middle.value(channel).orElseThrow())) + " at the others",
                        "doubt the reading of the " + rail + " current at that step: a loose lead, a range changed by"
                                + " hand; measure it again"));
    }

    private double beyond(Testimony step, Testimony middle, double set) {
        Estimate difference =
                step.mean(channel).orElseThrow().minus(middle.mean(channel).orElseThrow());
        double most = evidence.steps.stream()
                .mapToDouble(any -> any.setAmps().getOrDefault(rail, 0.0))
                .max()
                .orElse(set);
        return step == middle
                ? 0
                : Math.abs(difference.value()) - Reach.of(difference) - REPEATED * set - REPEATED_ZERO * most;
    }
}
