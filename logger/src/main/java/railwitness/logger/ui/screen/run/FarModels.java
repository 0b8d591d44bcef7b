package railwitness.logger.ui.screen.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.ui.screen.live.LiveRun;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.live.StepView;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.interlock.Limits;
import railwitness.safety.interlock.Phase;
import railwitness.safety.interlock.Subject;
import railwitness.safety.interlock.Watch;

/** What a run shows from two metres at one moment. */
final class FarModels {
    private static final String COMING = "\u2026";

    private FarModels() {}

    static FarModel of(LiveRun run, RunView view, List<Rail> rails) {
        int live = view.liveStep();
        Optional<StepView> step =
                live < 0 ? Optional.empty() : Optional.of(view.steps().get(live));
        List<FarModel.Line> lines = new ArrayList<>();
        for (int i = 0; i < rails.size(); i++) {
            String name = rails.get(i).name();
            Channel channel = new Channel(name, Quantity.VOLTAGE);
            lines.add(line(run, view, step, RailNames.full(name), i, channel, "V", p -> p.rail(name)));
        }
        Channel input = new Channel("input", Quantity.CURRENT);
        boolean metered = view.last().containsKey(input);
        lines.add(line(
                run,
                view,
                step,
                Words.of("run.input"),
                -1,
                metered ? input : new Channel("supply", Quantity.CURRENT),
                "A",
                Prediction::inputCurrent));
        return new FarModel(
                step.map(FarModels::title).orElseGet(() -> capital(view.saying())),
                Words.of(
                        "run.stepof",
                        Math.min(view.stepsDone() + 1, view.steps().size()),
                        view.steps().size()),
                List.copyOf(lines),
                step.map(of -> load(of.forecast().step())).orElse(""),
                step.map(of -> loads(of.forecast().step(), rails)).orElse(""),
                step.map(StepWords::doing).orElse(""),
                step.map(of -> StepWords.left(of, view.nowSeconds(), view.steps()))
                        .orElse(""),
                near(view, rails));
    }

    private static String title(StepView step) {
        Step of = step.forecast().step();
        return Words.of("step." + of.stage(), RailNames.inStep(of.name()));
    }

    private static FarModel.Line line(
            LiveRun run,
            RunView view,
            Optional<StepView> step,
            String name,
            int colour,
            Channel channel,
            String unit,
            Function<Prediction, OptionalDouble> predicted) {
        OptionalDouble now = view.value(channel);
        OptionalDouble expected =
                step.flatMap(of -> of.forecast().predicted()).map(predicted).orElse(OptionalDouble.empty());
        Limits limits = limits(run.watches(), channel);
        OptionalDouble low = known(limits.low());
        OptionalDouble high = known(limits.high());
        double size = Math.abs(now.orElse(0));
        boolean beyond = now.isPresent() && (size < low.orElse(size) || size > high.orElse(size));
        return new FarModel.Line(
                name,
                colour,
                now.isPresent() ? Numbers.fixed(now.getAsDouble(), 2) : COMING,
                unit,
                expected.isPresent() ? Numbers.fixed(expected.getAsDouble(), 1) : "",
                difference(now, expected, unit),
                room(now, low, high, unit),
                beyond,
                new FarModel.Strip(
                        now.isPresent() ? OptionalDouble.of(size) : now,
                        expected.isPresent() ? OptionalDouble.of(Math.abs(expected.getAsDouble())) : expected,
                        low,
                        high));
    }

    private static OptionalDouble known(double limit) {
        return Double.isFinite(limit) ? OptionalDouble.of(Math.abs(limit)) : OptionalDouble.empty();
    }

    static Limits limits(List<Watch> watches, Channel channel) {
        return watches.stream()
                .filter(watch -> watch.subject() instanceof Subject.Plain plain
                                && plain.channel().equals(channel)
                        || watch.subject() instanceof Subject.Magnitude magnitude
                                && magnitude.channel().equals(channel))
                .findFirst()
                .map(watch -> watch.limits().get(Phase.UP))
                .orElse(Limits.open());
    }

    private static String difference(OptionalDouble now, OptionalDouble expected, String unit) {
        if (now.isEmpty() || expected.isEmpty()) {
            return "";
        }
        double more = Math.abs(now.getAsDouble()) - Math.abs(expected.getAsDouble());
        String size = Numbers.fixed(Math.abs(more), 1);
        boolean none = size.chars().noneMatch(c -> c >= '1' && c <= '9');
        return none ? "" : Words.of(more > 0 ? "far.more" : "far.less", size + " " + unit);
    }

    /** To the nearer of the two limits. */
    private static String room(OptionalDouble now, OptionalDouble low, OptionalDouble high, String unit) {
        if (now.isEmpty() || low.isEmpty() && high.isEmpty()) {
            return "";
        }
        double size = Math.abs(now.getAsDouble());
        double above = low.isPresent() ? size - low.getAsDouble() : Double.POSITIVE_INFINITY;
        double below = high.isPresent() ? high.getAsDouble() - size : Double.POSITIVE_INFINITY;
        boolean lower = above < below;
        double gap = lower ? above : below;
        double limit = lower ? low.orElseThrow() : high.orElseThrow();
        String key = gap < 0 ? "far.beyond" : lower ? "far.above" : "far.below";
        return Words.of(key, Numbers.fixed(Math.abs(gap), 1) + " " + unit, Numbers.significant(limit, 4) + " " + unit);
    }

    private static String load(Step step) {
        return step.remoteOn() && step.loadAmps().values().stream().anyMatch(amps -> amps > 0)
                ? RailNames.inStep(step.name())
                : "";
    }

    private static String loads(Step step, List<Rail> rails) {
        List<String> all = new ArrayList<>();
        for (Rail rail : rails) {
            Double amps = step.loadAmps().get(rail.name());
            if (step.remoteOn() && amps != null && amps > 0) {
                all.add(Words.of("far.amps", Numbers.fixed(amps, 2), RailNames.sign(rail.name())));
            }
        }
        return String.join(", ", all);
    }

    private static List<FarModel.Near> near(RunView view, List<Rail> rails) {
        List<FarModel.Near> near = new ArrayList<>();
        for (StepView step : view.steps()) {
            String name = RailNames.inStep(step.forecast().step().name());
            if (step.live()) {
                near.add(new FarModel.Near(name, List.of(Words.of("far.reading")), true, false));
                continue;
            }
            List<String> values = new ArrayList<>();
            for (Rail rail : rails.subList(0, Math.min(2, rails.size()))) {
                values.add(value(step, rail.name()));
            }
            near.add(new FarModel.Near(name, values, false, step.point().isEmpty()));
        }
        return near;
    }

    private static String value(StepView step, String rail) {
        if (!step.forecast().step().remoteOn()) {
            return "";
        }
        if (step.point().isPresent()) {
            return step.point()
                    .get()
                    .rail(rail)
                    .map(of -> Numbers.fixed(of.voltage().value(), 2))
                    .orElse("");
        }
        OptionalDouble pencil =
                step.forecast().predicted().map(p -> p.rail(rail)).orElse(OptionalDouble.empty());
        return pencil.isPresent() ? Numbers.fixed(pencil.getAsDouble(), 1) : "";
    }

    private static String capital(String text) {
        return railwitness.logger.ui.screen.widgets.Sentences.capital(text);
    }
}
