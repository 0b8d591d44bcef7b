package railwitness.logger.ui.screen.live;

import java.time.Duration;
import java.util.List;
import railwitness.logger.recording.plan.Step;

/** How long things will take: settling as long as it took so far, averaging and holding as planned. */
public record TimeLeft(double settleSeconds) {
    private static final double USUAL_SETTLING = 4;

    /** What the steps that have ended say of the next ones. */
    public static TimeLeft of(List<StepView> steps) {
        return new TimeLeft(steps.stream()
                .filter(step -> step.averagedFrom().isPresent())
                .mapToDouble(step -> step.averagedFrom().getAsDouble()
                        - step.began().getAsDouble()
                        - seconds(step.forecast().step().hold()))
                .average()
                .orElse(USUAL_SETTLING));
    }

    /** A step that has not begun, s. */
    public double whole(Step step) {
        double settling = Math.min(settleSeconds, seconds(step.timing().settleAtMost()) + 1);
        return settling + seconds(step.hold()) + seconds(step.timing().average());
    }

    /** What is left of a step, s; never below zero. */
    public double left(StepView view, double nowSeconds) {
        Step step = view.forecast().step();
        if (view.ended().isPresent()) {
            return 0;
        }
        if (view.averagedFrom().isPresent()) {
            return Math.max(
                    0, view.averagedFrom().getAsDouble() + seconds(step.timing().average()) - nowSeconds);
        }
        double expected =
                view.began().isPresent() ? view.began().getAsDouble() + whole(step) - nowSeconds : whole(step);
        return Math.max(seconds(step.timing().average()), expected);
    }

    /** What is left of all steps. */
    public Duration left(List<StepView> steps, double nowSeconds) {
        double sum = steps.stream().mapToDouble(step -> left(step, nowSeconds)).sum();
        return Duration.ofMillis(Math.round(sum * 1000));
    }

    private static double seconds(Duration time) {
        return time.toMillis() / 1000.0;
    }
}
