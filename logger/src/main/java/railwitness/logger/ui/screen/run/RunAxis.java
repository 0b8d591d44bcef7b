package railwitness.logger.ui.screen.run;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import railwitness.analysis.design.Prediction;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.live.StepView;
import railwitness.logger.ui.screen.live.TimeLeft;
import railwitness.logger.ui.screen.trace.StepSpan;
import railwitness.logger.ui.screen.widgets.RailNames;

/** Which steps the traces show: those just done, the present one and the next ones; all of them once it is over. */
final class RunAxis {
    private static final int SEEN = 5;
    private static final int BEFORE = 3;
    private static final double LEAST_JUMP = 0.5;
    private static final int JUMPS = 8;

    private RunAxis() {}

    /** @param predicted what of a prediction the trace shows */
    static List<StepSpan> spans(RunView view, Function<Prediction, OptionalDouble> predicted) {
        List<StepSpan> all = all(view, predicted);
        if (view.over()) {
            return ended(all.subList(0, view.stepsDone()), view.nowSeconds());
        }
        int present = view.liveStep() >= 0 ? view.liveStep() : view.stepsDone();
        int from = Math.max(0, Math.min(present - BEFORE, all.size() - SEEN));
        return all.subList(from, Math.min(all.size(), from + SEEN));
    }

    /** What came after the last step belongs to the picture too: a trip shows there. */
    private static List<StepSpan> ended(List<StepSpan> done, double nowSeconds) {
        List<StepSpan> spans = new ArrayList<>(done);
        double from = done.isEmpty() ? 0 : done.get(done.size() - 1).toSeconds();
        OptionalDouble none = OptionalDouble.empty();
        if (nowSeconds > from) {
            spans.add(new StepSpan("", from, nowSeconds, none, none, none));
        }
        return spans;
    }

    private static List<StepSpan> all(RunView view, Function<Prediction, OptionalDouble> predicted) {
        TimeLeft time = TimeLeft.of(view.steps());
        List<StepSpan> spans = new ArrayList<>();
        double at = view.nowSeconds();
        for (StepView step : view.steps()) {
            double from = step.began().orElse(at);
            double to = step.ended()
                    .orElse(
                            step.live()
                                    ? jumping(from, view.nowSeconds() + time.left(step, view.nowSeconds()))
                                    : from + time.whole(step.forecast().step()));
            spans.add(new StepSpan(
                    RailNames.inStep(step.forecast().step().name()),
                    from,
                    to,
                    step.averagedFrom(),
                    step.averagedFrom().isPresent()
                            ? OptionalDouble.of(step.ended().orElse(view.nowSeconds()))
                            : OptionalDouble.empty(),
                    step.forecast().predicted().map(predicted).orElse(OptionalDouble.empty())));
            at = to;
        }
        return spans;
    }

    /** The end of the present step moves seldom, so that the picture stands still while it goes on. */
    private static double jumping(double from, double to) {
        double jump = LEAST_JUMP;
        while (jump * JUMPS < to - from) {
            jump *= 2;
        }
        return from + Math.ceil((to - from) / jump - 1e-6) * jump;
    }
}
