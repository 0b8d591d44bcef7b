package railwitness.logger.screen.run;

import railwitness.logger.plan.Step;
import railwitness.logger.screen.paper.Numbers;
import railwitness.logger.screen.paper.Words;

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
