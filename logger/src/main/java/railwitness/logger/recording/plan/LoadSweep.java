package railwitness.logger.recording.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * All rails loaded alike, in the order given; the 25 % step (or the first) is repeated at the end, so that heating is
 * not taken for load.
 *
 * @param percents of full load, above 0 to 150
 */
public record LoadSweep(List<Double> percents, Timing timing) implements Stage {
    public LoadSweep {
        percents = List.copyOf(percents);
    }

    @Override
    public String word() {
        return "load-sweep";
    }

    @Override
    public List<Step> steps(Rating rating) {
        List<Step> steps = new ArrayList<>();
        for (double percent : percents) {
            steps.add(step(rating, percent, ""));
        }
        steps.add(step(rating, percents.contains(25.0) ? 25.0 : percents.get(0), " again"));
        return steps;
    }

    private Step step(Rating rating, double percent, String suffix) {
        return new Step(
                word(), Percent.words(percent) + suffix, rating.nominalInputVolts(), rating.atPercent(percent), timing);
    }
}
