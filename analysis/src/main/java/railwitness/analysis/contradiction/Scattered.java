package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** One average over readings that are not of one state: a single wild one, or a unit that starts and drops out. */
final class Scattered {
    /** Readings of a settled step lie nearer together than this share of their median (common practice, no source). */
    private static final double SHARE = 0.3;

    /** And than this share of the largest median of the channel: zero, and small loads. */
    private static final double SHARE_OF_LARGEST = 0.05;

    /** Nor does anybody lose a figure by so little, in the channel's unit (common practice, no source). */
    private static final double LITTLE = 0.01;

    private final Evidence evidence;

    Scattered(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Contradiction> find() {
        List<Contradiction> found = new ArrayList<>();
        look(Evidence.INPUT_VOLTS, found);
        look(Evidence.INPUT_AMPS, found);
        for (String rail : evidence.rails) {
            look(rail + ".voltage", found);
            look(rail + ".current", found);
        }
        return found;
    }

    private void look(String channel, List<Contradiction> found) {
        double largest = evidence.steps.stream()
                .filter(step -> step.means().containsKey(channel))
                .mapToDouble(step -> Math.abs(step.means().get(channel).median()))
                .max()
                .orElse(0);
        List<Testimony> wild = evidence.steps.stream()
                .filter(step -> step.point().settled() && !Evidence.standby(step))
                .filter(step -> step.means().containsKey(channel))
                .filter(step -> beyond(step.means().get(channel), largest))
                .toList();
        wild.stream()
                .max(Comparator.comparingDouble(
                        step -> step.means().get(channel).apart()))
                .ifPresent(worst -> found.add(told(channel, worst.means().get(channel), wild)));
    }

    private static boolean beyond(Mean mean, double largest) {
        return mean.apart() > SHARE * Math.abs(mean.median()) + SHARE_OF_LARGEST * largest + LITTLE;
    }

    private static Contradiction told(String channel, Mean mean, List<Testimony> wild) {
        String unit = channel.endsWith("current") ? " A" : " V";
        return new Contradiction(
                ContradictionCode.SCATTERED,
                "the " + Evidence.words(channel) + " reads " + Evidence.number(mean.median()) + unit + " and once "
                        + Evidence.number(mean.farthest()) + unit
                        + " in one average of a step that had settled: its mean says nothing (" + Evidence.at(wild)
                        + ")",
                "a loose lead, a meter that changed its range, a row that was typed wrong; whether the unit starts and"
                        + " drops out again and again",
                Set.of(channel));
    }
}
