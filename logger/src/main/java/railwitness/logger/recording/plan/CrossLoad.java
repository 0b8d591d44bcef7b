package railwitness.logger.recording.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Each rail in turn keeps its load while the others go from low to full: what one rail does to the other.
 *
 * @param lowPercent of full load
 * @param highPercent of full load, above the low one
 */
public record CrossLoad(double lowPercent, double highPercent, Timing timing) implements Stage {
    @Override
    public String word() {
        return "cross-load";
    }

    @Override
    public List<Step> steps(Rating rating) {
        List<Step> steps = new ArrayList<>();
        steps.add(step(rating, "all " + Percent.words(lowPercent), rating.atPercent(lowPercent)));
        for (String rail : rating.fullLoadAmps().keySet()) {
            steps.add(step(
                    rating,
                    rail + " " + Percent.words(highPercent) + ", rest " + Percent.words(lowPercent),
                    rating.atPercent(rail, highPercent, lowPercent)));
        }
        return steps;
    }

    private Step step(Rating rating, String name, Map<String, Double> amps) {
        return new Step(word(), name, rating.nominalInputVolts(), amps, timing);
    }
}
