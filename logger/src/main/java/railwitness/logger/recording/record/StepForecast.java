package railwitness.logger.recording.record;

import java.util.List;
import java.util.Optional;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.sheet.Sheets;

/**
 * What the design sheet predicts for a step of the plan on this bench: the supply's setting less what the leads drop.
 *
 * @param predicted empty for a step with the unit off, and where the sheet does not know the turns
 */
public record StepForecast(Step step, Optional<Prediction> predicted) {
    /** The drop in the leads follows the current and the current the drop; this many rounds settle it. */
    private static final int ROUNDS = 4;

    /** One for each step of the plan, in order. */
    public static List<StepForecast> of(Sheets sheets) {
        Design design = sheets.design().content();
        double leadOhms = sheets.bench().content().leadResistanceOhms();
        return sheets.plan().content().steps(RunSetup.ratingOf(design)).stream()
                .map(step -> of(design, step, leadOhms))
                .toList();
    }

    static StepForecast of(Design design, Step step, double leadOhms) {
        return new StepForecast(step, predicted(design, step, leadOhms));
    }

    private static Optional<Prediction> predicted(Design design, Step step, double leadOhms) {
        if (!step.remoteOn() || step.inputVolts() <= 0) {
            return Optional.empty();
        }
        double terminals = step.inputVolts();
        Optional<Prediction> predicted = Prediction.of(design, terminals, step.loadAmps());
        for (int round = 0; round < ROUNDS && predicted.isPresent(); round++) {
            terminals = step.inputVolts() - leadOhms * predicted.get().inputAmperes();
            if (terminals <= 0) {
                return Optional.empty();
            }
            predicted = Prediction.of(design, terminals, step.loadAmps());
        }
        return predicted;
    }
}
