package railwitness.logger.ui.screen.run;

import java.time.Duration;
import java.util.List;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.ui.screen.live.StepView;
import railwitness.logger.ui.screen.live.TimeLeft;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Words;

/** What the present step is doing, in a technician's words. */
final class StepWords {
    private StepWords() {}

    static String now(StepView view, double nowSeconds) {
        Step step = view.forecast().step();
        String name = Words.of("step." + step.stage(), RailNames.inStep(step.name()));
        if (view.averagedFrom().isPresent()) {
            double gone = nowSeconds - view.averagedFrom().getAsDouble();
            double left = step.timing().average().toMillis() / 1000.0 - gone;
            return Words.of("run.averaging", name, span(left));
        }
        double gone = nowSeconds - view.began().orElse(nowSeconds);
        if (!step.hold().isZero()) {
            return Words.of("run.holding", name, span(gone), Numbers.span(step.hold()));
        }
        return Words.of(
                "run.settling", name, span(gone), Numbers.span(step.timing().settleAtMost()));
    }

    /** Settling, averaging or holding, as a caption of the time that it still takes. */
    static String doing(StepView view) {
        if (view.averagedFrom().isPresent()) {
            return Words.of("far.averaging");
        }
        return Words.of(view.forecast().step().hold().isZero() ? "far.settling" : "far.holding");
    }

    /** How long that still takes, as far as it is known. */
    static String left(StepView view, double nowSeconds, List<StepView> steps) {
        Step step = view.forecast().step();
        if (view.averagedFrom().isPresent()) {
            double gone = nowSeconds - view.averagedFrom().getAsDouble();
            return span(step.timing().average().toMillis() / 1000.0 - gone);
        }
        double average = step.timing().average().toMillis() / 1000.0;
        return span(TimeLeft.of(steps).left(view, nowSeconds) - average);
    }

    private static String span(double seconds) {
        return Numbers.span(Duration.ofMillis(Math.round(Math.max(0, seconds) * 1000)));
    }
}
