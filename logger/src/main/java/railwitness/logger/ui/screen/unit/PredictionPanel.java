package railwitness.logger.ui.screen.unit;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.analysis.transformer.WoundDesign;
import railwitness.logger.recording.plan.LoadSweep;
import railwitness.logger.recording.plan.NoLoad;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.plan.Timing;
import railwitness.logger.recording.record.RunSetup;
import railwitness.logger.recording.sheet.SheetRemark;
import railwitness.logger.ui.screen.form.FormWords;
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

/** What the design sheet predicts, in pencil, as it is typed. */
final class PredictionPanel extends Readable {
    private static final Timing ANY = new Timing(Duration.ofSeconds(1), Duration.ofSeconds(1));
    private static final List<Double> LOADS = List.of(25.0, 50.0, 75.0, 100.0);

    private final Note turns = Note.of("", Type.TEXT);
    private final RuledSheet sheet = new RuledSheet("prediction", List.of());
    private final RuledSheet losses =
            new RuledSheet("predicted losses", List.of(Column.words(Words.of("prediction.part")), Column.numbers("W")));
    private final Label lossTitle = Label.of(Words.of("prediction.losses"), Type.HEADING);
    private final Note left = Note.muted("", Type.CAPTION);
    private final ToroidPanel toroid = new ToroidPanel();
    private final Note look = Note.of("", Type.TEXT);

    PredictionPanel() {
        super(new MigLayout("insets 0 0 0 10, gap 0 4, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        add(Label.of(Words.of("prediction.title"), Type.TITLE), "wmin 0");
        add(turns, "growx, wmin 60, gapright 22, gapbottom 8");
        add(sheet.head(), "growx");
        add(sheet, "growx, gapbottom 14");
        add(lossTitle, "wmin 0");
        add(losses, "growx");
        add(left, "growx, wmin 60, gaptop 8");
        add(toroid, "growx, wmin 60, gaptop 14");
        look.setName("worth a look");
        add(look, "growx, wmin 60, gaptop 8");
    }

    /** Says what may be a slip; what cannot be is marked at its field. */
    void look(List<SheetRemark> remarks) {
        look.setText(remarks.stream()
                .filter(remark -> !remark.refuses())
                .map(SheetRemark::words)
                .collect(Collectors.joining("\n")));
    }

    /** The transformer by itself, with core and wire. */
    void toroid(WoundDesign design) {
        toroid.show(design);
    }

    void show(Design design) {
        List<Step> steps = new ArrayList<>(new NoLoad(ANY).steps(RunSetup.ratingOf(design)));
        List<Step> loaded = new LoadSweep(LOADS, ANY).steps(RunSetup.ratingOf(design));
        steps.addAll(loaded.subList(0, LOADS.size()));
        sheet.columns(columns(design));
        sheet.rows(steps.stream().map(step -> row(design, step)).toList());
        Step full = steps.get(steps.size() - 1);
        Optional<Prediction> atFull = predicted(design, full);
        turns.setText(turns(design, atFull));
        losses.rows(atFull.map(PredictionPanel::parts).orElse(List.of()));
        lossTitle.setVisible(atFull.filter(p -> !p.lossWatts().isEmpty()).isPresent());
        left.setText(atFull.filter(p -> !p.leftOut().isEmpty())
                .map(p -> Words.of(
                        "prediction.leftout",
                        p.leftOut().stream().map(FormWords::key).collect(Collectors.joining(", "))))
                .orElse(""));
        revalidate();
    }

    private static List<Column> columns(Design design) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.words(Words.of("run.load")));
        columns.add(Column.numbers(Words.of("run.input"), "A").givingWay(1));
        for (Rail rail : design.rails()) {
            columns.add(Column.numbers(RailNames.full(rail.name()), "V"));
        }
        columns.add(Column.numbers(Words.of("run.efficiency"), "%").givingWay(2));
        columns.add(Column.numbers(Words.of("prediction.loss"), "W").givingWay(3));
        return columns;
    }

    private static Optional<Prediction> predicted(Design design, Step step) {
        return Prediction.of(design, step.inputVolts(), step.loadAmps());
    }

    private static Row row(Design design, Step step) {
        Optional<Prediction> predicted = predicted(design, step);
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.of(step.name(), Ink.MUTED));
        cells.add(pencil(predicted.map(Prediction::inputCurrent), 1, 2));
        for (Rail rail : design.rails()) {
            cells.add(pencil(predicted.map(p -> p.rail(rail.name())), 1, 1));
        }
        cells.add(pencil(predicted.filter(p -> p.outputWatts() > 0).map(Prediction::efficiency), 100, 1));
        cells.add(pencil(predicted.map(Prediction::loss), 1, 1));
        return Row.of(cells);
    }

    /** What the sheet does not tell stays empty. */
    private static Cell pencil(Optional<OptionalDouble> value, double scale, int places) {
        return pencil(value.filter(OptionalDouble::isPresent)
                .map(known -> Numbers.fixed(known.getAsDouble() * scale, places)));
    }

    private static Cell pencil(Optional<String> text) {
        return Cell.of(text.orElse(""), Ink.PENCIL);
    }

    private static List<Row> parts(Prediction predicted) {
        List<Row> rows = new ArrayList<>();
        predicted
                .lossWatts()
                .forEach((part, watts) -> rows.add(
                        Row.of(List.of(Cell.of(part, Ink.MUTED), Cell.of(Numbers.fixed(watts, 2), Ink.PENCIL)))));
        return rows;
    }

    private static String turns(Design design, Optional<Prediction> full) {
        if (design.transformer().isEmpty() || full.isEmpty()) {
            return Words.of("prediction.none");
        }
        String ratio = Words.of(
                "prediction.ratio",
                Numbers.significant(design.transformer().get().ratio(), 4));
        String flux = full.get().fluxTesla().isPresent()
                ? " "
                        + Words.of(
                                "prediction.flux",
                                Numbers.fixed(full.get().fluxTesla().getAsDouble(), 3))
                : "";
        var highest = design.transformer().get().highestFluxTesla();
        String limit = !flux.isEmpty() && highest.isPresent()
                ? Words.of("prediction.flux.limit", Numbers.plain(highest.getAsDouble()))
                : "";
        return ratio + flux + limit;
    }
}
