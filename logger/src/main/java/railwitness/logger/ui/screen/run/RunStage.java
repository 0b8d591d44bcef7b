package railwitness.logger.ui.screen.run;

import java.awt.CardLayout;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.recording.record.StepForecast;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.burnin.BurnInPanel;
import railwitness.logger.ui.screen.live.LiveRun;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.live.StepView;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;

/** The sheet that fills itself while the unit is run, with the traces at its right. */
public final class RunStage implements Stage {
    private final WindowModel desk;
    private final RunLine line;
    private static final Duration LONG_HOLD = Duration.ofMinutes(20);

    private final CardLayout cards = new CardLayout();
    private final JPanel face = new JPanel(cards);
    private final JPanel halves = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 56,fill][grow 44,fill]"));
    private final BurnInPanel burnIn;
    private final Label title = Label.of("", Type.TITLE);
    private final Label caption = Label.muted("", Type.TEXT);
    private final RuledSheet sheet = new RuledSheet("test sheet", List.of());
    private final Sheet right = new Sheet(new MigLayout("insets 14 18 8 18, fill"), Palette::paper);
    private RunRows rows;
    private RunTraces traces;
    private Sheets shown;
    private int revealed = -1;

    /** @param findings enters the findings */
    public RunStage(WindowModel desk, Asker asker, Runnable findings) {
        this.desk = desk;
        this.line = new RunLine(desk, asker, findings);
        Sheet left = new Sheet(
                new MigLayout("insets 14 20 0 20, gap 0, fill, wrap 1, hidemode 3", "[grow,fill]", "[][]12[grow,fill]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(title, "wmin 0");
        left.add(caption, "wmin 0");
        left.add(Scroll.of(sheet), "grow, push");
        halves.add(left, "grow, push, w 56%!");
        halves.add(right, "grow, push, w 44%!");
        burnIn = new BurnInPanel(desk);
        face.add(halves, "sheet");
        face.add(burnIn.face(), "hold");
    }

    @Override
    public String key() {
        return "run";
    }

    @Override
    public JComponent face() {
        return face;
    }

    @Override
    public Optional<String> closed() {
        return Optional.empty();
    }

    @Override
    public void entered() {
        moment();
    }

    @Override
    public void moment() {
        Optional<LiveRun> run = desk.run();
        Sheets sheets = run.map(LiveRun::sheets).orElse(desk.sheets());
        if (sheets != shown) {
            begin(sheets);
        }
        if (run.isEmpty()) {
            cards.show(face, "sheet");
            sheet.rows(rows.rows(line.pencilled(), Optional.empty()));
            return;
        }
        RunView view = desk.view().orElseThrow();
        sheet.rows(rows.rows(view.steps(), Optional.of(view)));
        if (traces != null) {
            traces.show(run.get(), view);
        }
        follow(view);
        burnIn(run.get(), view);
        line.moment(view);
    }

    /** While a load is held for long, the burn-in page stands in place of sheet and traces. */
    private void burnIn(LiveRun run, RunView view) {
        int live = view.liveStep();
        boolean holds = live >= 0
                && view.steps().get(live).forecast().step().hold().compareTo(LONG_HOLD) >= 0
                && view.prompt().isEmpty();
        if (holds) {
            burnIn.open(Optional.of(run.file()));
            burnIn.moment();
        }
        cards.show(face, holds ? "hold" : "sheet");
    }

    private void begin(Sheets sheets) {
        shown = sheets;
        revealed = -1;
        RunColumns columns = RunColumns.of(sheets);
        rows = new RunRows(columns);
        sheet.columns(columns.columns());
        line.pencilled(StepForecast.of(sheets).stream().map(StepView::toCome).toList());
        var design = sheets.design().content();
        title.setText(RunTitle.title(design));
        caption.setText(RunTitle.caption(design, sheets.plan().content()));
        traces = new RunTraces(design.rails());
        right.removeAll();
        right.add(traces, "grow, push");
        right.revalidate();
    }

    /** The row being measured stays in view while the person does not look at another. */
    private void follow(RunView view) {
        int live = view.liveStep();
        if (live >= 0 && live != revealed) {
            revealed = live;
            for (int i = 0; i < sheet.rows().size(); i++) {
                if (sheet.rows().get(i).live()) {
                    sheet.reveal(i);
                }
            }
        }
    }

    @Override
    public StatusLine line() {
        return line.line();
    }

    /** The sheet, for whoever reads it aloud. */
    public RuledSheet sheet() {
        return sheet;
    }
}
