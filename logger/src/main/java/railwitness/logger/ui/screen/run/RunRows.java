package railwitness.logger.ui.screen.run;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.live.StepView;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.interlock.Watch;

/** The rows of the sheet: pencil where it is predicted, live where it is measured, ink where it is done. */
final class RunRows {
    private static final Cell COMING = Cell.of("\u2026", Ink.LIVE);
    /** A step is seen to come, begun, averaged and ended. */
    private static final int MOST_VIEWS = 4;

    private static final double MILLI = 1000;
    private static final double PERCENT = 100;

    private List<Watch> watches = List.of();
    private final RunColumns columns;
    private final Map<StepView, Row> written = new IdentityHashMap<>();

    RunRows(RunColumns columns) {
        this.columns = columns;
    }

    /** @param wanted what is watched, so that a broken limit is marked while it is */
    void watched(List<Watch> wanted) {
        watches = wanted;
    }

    /** @param view how far the run is */
    List<Row> rows(List<StepView> steps, Optional<RunView> view) {
        if (written.size() > MOST_VIEWS * steps.size()) {
            written.clear();
        }
        List<Row> rows = new ArrayList<>();
        String stage = "";
        for (StepView step : steps) {
            String mine = step.forecast().step().stage();
            if (!mine.equals(stage)) {
                rows.add(Row.group(StageWords.heading(step.forecast().step())));
                stage = mine;
            }
            rows.add(row(step, view));
        }
        return rows;
    }

    /** A step that does not go on is the same object as before, and so is its row. */
    private Row row(StepView step, Optional<RunView> view) {
        if (step.live() && view.isPresent() && !view.get().over()) {
            return Row.live(live(step, view.get()));
        }
        return written.computeIfAbsent(step, this::row);
    }

    private Row row(StepView step) {
        if (step.point().isPresent()) {
            return Row.of(measured(step, step.point().get()));
        }
        return Row.of(predicted(step));
    }

    private List<Cell> measured(StepView step, OperatingPoint point) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.ink(RailNames.inStep(point.step()) + (point.settled() ? "" : Words.of("run.unsettled"))));
        cells.add(Cell.ink(load(step.forecast().step())));
        cells.add(Cell.ink(volts(point.input().voltage().value())));
        cells.add(Cell.ink(amps(point.input().current().value())));
        boolean on = step.forecast().step().remoteOn();
        Optional<Prediction> predicted = step.forecast().predicted();
        for (String rail : columns.rails()) {
            String expected = predicted
                    .map(p -> p.rail(rail))
                    .filter(OptionalDouble::isPresent)
                    .map(volts -> Numbers.fixed(volts.getAsDouble(), 1))
                    .orElse("");
            cells.add(on ? inked(point.rail(rail).map(RailPoint::voltage), 1, 2).beside(expected) : Cell.EMPTY);
        }
        for (String rail : columns.ripple()) {
            cells.add(on ? inked(point.rail(rail).flatMap(RailPoint::rippleRms), MILLI, 1) : Cell.EMPTY);
        }
        cells.add(inked(point.efficiency().filter(any -> point.outputPower().value() > 0), PERCENT, 1));
        for (String node : columns.temperatures()) {
            cells.add(inked(Optional.ofNullable(point.temperatures().get(node)), 1, 0));
        }
        return cells;
    }

    private static Cell inked(Optional<Estimate> value, double scale, int places) {
        return value.map(known -> Cell.ink(Numbers.fixed(known.value() * scale, places)))
                .orElse(Cell.EMPTY);
    }

    private List<Cell> live(StepView step, RunView view) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.of(RailNames.inStep(step.forecast().step().name()), Ink.LIVE));
        cells.add(Cell.of(load(step.forecast().step()), Ink.LIVE));
        cells.add(live(first(view, "input", "supply", Quantity.VOLTAGE), 1, 2));
        cells.add(
                first(view, "input", "supply", Quantity.CURRENT).isPresent()
                        ? Cell.of(
                                amps(first(view, "input", "supply", Quantity.CURRENT)
                                        .getAsDouble()),
                                Ink.LIVE)
                        : COMING);
        for (String rail : columns.rails()) {
            Channel channel = new Channel(rail, Quantity.VOLTAGE);
            cells.add(marked(channel, view.value(channel), 2));
        }
        for (String rail : columns.ripple()) {
            OptionalDouble ripple = view.value(new Channel(rail, Quantity.RIPPLE));
            cells.add(step.averagedFrom().isPresent() ? live(ripple, MILLI, 1) : COMING);
        }
        cells.add(COMING);
        for (String node : columns.temperatures()) {
            cells.add(live(view.value(new Channel(node, Quantity.TEMPERATURE)), 1, 0));
        }
        return cells;
    }

    /** Beyond a limit it is marked at once. */
    private Cell marked(Channel channel, OptionalDouble value, int places) {
        boolean broken =
                value.isPresent() && !FarModels.limits(watches, channel).hold(Math.abs(value.getAsDouble()));
        return broken ? Cell.of(Numbers.fixed(value.getAsDouble(), places), Ink.FAULT) : live(value, 1, places);
    }

    private static OptionalDouble first(RunView view, String node, String otherwise, Quantity quantity) {
        OptionalDouble value = view.value(new Channel(node, quantity));
        return value.isPresent() ? value : view.value(new Channel(otherwise, quantity));
    }

    private static Cell live(OptionalDouble value, double scale, int places) {
        return value.isPresent() ? Cell.of(Numbers.fixed(value.getAsDouble() * scale, places), Ink.LIVE) : COMING;
    }

    private List<Cell> predicted(StepView view) {
        Step step = view.forecast().step();
        Optional<Prediction> predicted = view.forecast().predicted();
        List<Cell> cells = new ArrayList<>();
        cells.add(name(view));
        cells.add(pencil(step.remoteOn() ? load(step) : ""));
        cells.add(pencil(predicted.map(p -> volts(p.inputVolts())).orElse(volts(step.inputVolts()))));
        cells.add(pencil(predicted
                .map(Prediction::inputCurrent)
                .filter(OptionalDouble::isPresent)
                .map(amps -> amps(amps.getAsDouble()))
                .orElse("")));
        for (String rail : columns.rails()) {
            cells.add(pencil(predicted
                    .map(p -> p.railVolts().get(rail))
                    .map(v -> Numbers.fixed(v, 1))
                    .orElse("")));
        }
        for (String rail : columns.ripple()) {
            cells.add(pencil(predicted
                    .map(p -> p.rippleRmsVolts().get(rail))
                    .map(v -> Numbers.fixed(v * MILLI, 0))
                    .orElse("")));
        }
        cells.add(pencil(predicted
                .filter(p -> p.outputWatts() > 0)
                .map(Prediction::efficiency)
                .filter(OptionalDouble::isPresent)
                .map(share -> Numbers.fixed(share.getAsDouble() * PERCENT, 1))
                .orElse("")));
        columns.temperatures().forEach(node -> cells.add(Cell.EMPTY));
        return cells;
    }

    private static Cell name(StepView view) {
        String name = RailNames.inStep(view.forecast().step().name());
        Optional<StepOutcome> outcome = view.entry().map(entry -> entry.outcome());
        if (outcome.isPresent() && outcome.get() != StepOutcome.MEASURED) {
            return Cell.of(name + ": " + Words.of("outcome." + outcome.get().name()), Ink.FAULT);
        }
        return Cell.of(name, Ink.MUTED);
    }

    private static Cell pencil(String text) {
        return Cell.of(text, Ink.PENCIL);
    }

    private String load(Step step) {
        List<Double> amps = List.copyOf(step.loadAmps().values());
        if (!step.remoteOn()) {
            return "";
        }
        if (amps.stream().distinct().count() <= 1) {
            return amps.isEmpty() ? "" : Numbers.fixed(amps.get(0), 2);
        }
        return loads(step.loadAmps());
    }

    private String loads(Map<String, Double> amps) {
        return String.join(
                " / ",
                columns.rails().stream()
                        .map(rail -> Numbers.plain(amps.getOrDefault(rail, 0.0)))
                        .toList());
    }

    private static String volts(double value) {
        return Numbers.fixed(value, 2);
    }

    static String amps(double value) {
        double magnitude = Math.abs(value);
        return Numbers.fixed(value, magnitude < 0.1 ? 4 : magnitude < 1 ? 3 : 2);
    }
}
