package railwitness.logger.ui.screen.unit;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.design.Prediction;
import railwitness.logger.recording.record.StepForecast;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.live.TimeLeft;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Words;

/** The steps a plan comes to, how long each takes and all together, in pencil, as the plan is written. */
final class PlanPanel extends Readable {
    private static final TimeLeft TIMES = TimeLeft.of(List.of());

    private final Note total = Note.of("", Type.TEXT);
    private final RuledSheet steps = new RuledSheet(
            "planned steps",
            List.of(
                    Column.words(Words.of("run.step")),
                    Column.numbers(Words.of("plan.supply"), "V"),
                    Column.numbers(Words.of("run.input"), "A"),
                    Column.numbers(Words.of("plan.time"))));

    PlanPanel() {
        super(new MigLayout("insets 0 0 0 10, gap 0 4, wrap 1, fillx", "[grow,fill]"));
        total.setName("plan time");
        add(Label.of(Words.of("plan.title"), Type.TITLE));
        add(total, "growx, wmin 60, gapbottom 8");
        add(steps.head(), "growx");
        add(steps, "growx");
    }

    void show(Sheets sheets) {
        List<StepForecast> forecasts = StepForecast.of(sheets);
        double seconds = forecasts.stream()
                .mapToDouble(forecast -> TIMES.whole(forecast.step()))
                .sum();
        total.setText(Words.of("plan.total", forecasts.size(), span(seconds)));
        List<Row> rows = new ArrayList<>();
        forecasts.forEach(forecast -> rows.add(row(forecast)));
        steps.rows(rows);
        revalidate();
    }

    private static Row row(StepForecast forecast) {
        return Row.of(List.of(
                Cell.of(
                        Words.of(
                                "step." + forecast.step().stage(),
                                RailNames.inStep(forecast.step().name())),
                        Ink.MUTED),
                Cell.of(Numbers.fixed(forecast.step().inputVolts(), 1), Ink.PENCIL),
                Cell.of(
                        forecast.predicted()
                                .map(Prediction::inputCurrent)
                                .filter(OptionalDouble::isPresent)
                                .map(amps -> Numbers.fixed(amps.getAsDouble(), 2))
                                .orElse(""),
                        Ink.PENCIL),
                Cell.of(span(TIMES.whole(forecast.step())), Ink.PENCIL)));
    }

    private static String span(double seconds) {
        return Numbers.span(Duration.ofMillis(Math.round(seconds * 1000)));
    }
}
