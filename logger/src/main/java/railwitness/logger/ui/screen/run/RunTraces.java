package railwitness.logger.ui.screen.run;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.ui.screen.live.LiveRun;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.live.StepView;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.trace.StepSpan;
import railwitness.logger.ui.screen.trace.TraceModel;
import railwitness.logger.ui.screen.trace.TraceView;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.interlock.Phase;
import railwitness.safety.interlock.Subject;
import railwitness.safety.interlock.Watch;

/** The traces of the rails and of the input current, one below the other. */
final class RunTraces extends JPanel {
    /** Less than this is noise of the meters, V or A. */
    private static final double LEAST_RANGE = 0.1;

    private static final Channel INPUT_AMPS = new Channel("input", Quantity.CURRENT);
    private static final Channel SUPPLY_AMPS = new Channel("supply", Quantity.CURRENT);

    private final transient List<Rail> rails;
    private final transient List<TraceView> views = new ArrayList<>();

    RunTraces(List<Rail> rails) {
        super(new MigLayout("insets 0, gap 0 10, fill, wrap 1", "[grow,fill]", "[grow,fill]"));
        this.rails = rails;
        setOpaque(false);
        for (Rail rail : rails) {
            views.add(new TraceView("trace " + rail.name()));
        }
        views.add(new TraceView("trace input"));
        views.forEach(view -> add(view, "grow, push, hmin 90"));
        add(new TraceKey(), "growx, pushx, hmin 24, hmax 24");
    }

    void show(LiveRun run, RunView view) {
        for (int i = 0; i < rails.size(); i++) {
            views.get(i).show(rail(run, view, i));
        }
        views.get(rails.size()).show(input(run, view));
    }

    private TraceModel rail(LiveRun run, RunView view, int index) {
        Rail rail = rails.get(index);
        Channel channel = new Channel(rail.name(), Quantity.VOLTAGE);
        Function<Prediction, OptionalDouble> predicted = of -> of.rail(rail.name());
        return model(
                run,
                view,
                channel,
                RailNames.full(rail.name()),
                "V",
                Look.palette().rail(index),
                index / Look.palette().rails().size() * 6,
                rail.nominalVolts() < 0,
                predicted);
    }

    private TraceModel input(LiveRun run, RunView view) {
        Channel channel = run.trace(INPUT_AMPS).isPresent() ? INPUT_AMPS : SUPPLY_AMPS;
        return model(
                run,
                view,
                channel,
                Words.of("run.input.current"),
                "A",
                Look.palette().input(),
                0,
                false,
                Prediction::inputCurrent);
    }

    private static TraceModel model(
            LiveRun run,
            RunView view,
            Channel channel,
            String title,
            String unit,
            Color colour,
            int dash,
            boolean negative,
            Function<Prediction, OptionalDouble> predicted) {
        List<StepSpan> spans = RunAxis.spans(view, predicted);
        OptionalDouble value = view.value(channel);
        double from = spans.isEmpty() ? 0 : spans.get(0).fromSeconds();
        double to = spans.isEmpty() ? 1 : spans.get(spans.size() - 1).toSeconds();
        return new TraceModel(
                title,
                value.isPresent() ? Numbers.fixed(value.getAsDouble(), 2) + " " + unit : "\u2026",
                remark(view, predicted, unit),
                new TraceModel.Stroke(colour, dash, LEAST_RANGE, false),
                from,
                to,
                spans,
                limits(run.watches(), channel, unit, negative, view.tripped().equals(Optional.of(channel))),
                OptionalDouble.empty(),
                run.notes(),
                run.trace(channel).map(keeper -> keeper));
    }

    private static String remark(RunView view, Function<Prediction, OptionalDouble> predicted, String unit) {
        int live = view.liveStep();
        if (live < 0) {
            return "";
        }
        StepView step = view.steps().get(live);
        OptionalDouble value = step.forecast().predicted().map(predicted).orElse(OptionalDouble.empty());
        return value.isPresent() ? Words.of("run.predicted", Numbers.fixed(value.getAsDouble(), 1) + " " + unit) : "";
    }

    /** A rail's limits hold for either sign; they are drawn on the side on which it stands. */
    private static List<TraceModel.LimitLine> limits(
            List<Watch> watches, Channel channel, String unit, boolean negative, boolean broken) {
        List<TraceModel.LimitLine> lines = new ArrayList<>();
        for (Watch watch : watches) {
            boolean plain =
                    watch.subject() instanceof Subject.Plain p && p.channel().equals(channel);
            boolean magnitude = watch.subject() instanceof Subject.Magnitude m
                    && m.channel().equals(channel);
            if (plain || magnitude) {
                double sign = magnitude && negative ? -1 : 1;
                var limits = watch.limits().get(Phase.UP);
                line(lines, "run.limit.low", limits.low(), sign, unit, broken);
                line(lines, "run.limit.high", limits.high(), sign, unit, broken);
            }
        }
        return lines;
    }

    private static void line(
            List<TraceModel.LimitLine> lines, String key, double value, double sign, String unit, boolean broken) {
        if (Double.isFinite(value)) {
            double shown = sign * value;
            lines.add(new TraceModel.LimitLine(Words.of(key, Numbers.plain(shown) + " " + unit), shown, broken));
        }
    }
}
