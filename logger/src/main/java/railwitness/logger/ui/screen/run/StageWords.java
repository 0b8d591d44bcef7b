package railwitness.logger.ui.screen.run;

import railwitness.logger.recording.plan.Step;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/** What a stage of the plan is called above its rows. */
final class StageWords {
    private StageWords() {}

    /** @param first its first step */
    static String heading(Step first) {
        double load = first.loadAmps().values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
        return Words.of("stage." + first.stage(), Numbers.plain(load));
    }
}
