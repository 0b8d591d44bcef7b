package railwitness.logger.ui.screen.run;

import java.awt.CardLayout;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.recording.record.StepForecast;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.burnin.BurnInPanel;
import railwitness.logger.ui.screen.live.LiveRun;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.live.StepView;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Filling;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** The sheet that fills itself while the unit is run, with the traces at its right. */
public final class RunStage implements Stage {
    private final WindowModel desk;
    private final Supplier<StatusLine> before;
    private final RunLine line;
    private static final Duration LONG_HOLD = Duration.ofMinutes(20);
    private static final int CRAMPED = 520;
    private static final String FAR = "far";
    private static final String NEAR = "near";
    private static final String HOLD = "hold";

    private final CardLayout cards = new CardLayout();
    private final JPanel face = new JPanel(cards);
    private final JPanel halves = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 56,fill][grow 44,fill]"));
    private final BurnInPanel burnIn;
    private final FarView view = new FarView();
    private final Label title = Label.of("", Type.TITLE);
    private final Label caption = Label.muted("", Type.TEXT);
    private final RuledSheet sheet = new RuledSheet("test sheet", List.of());
    private final Sheet right = new Sheet(new MigLayout("insets 14 18 8 18, fill"), Palette::paper);
    private RunRows rows;
    private RunTraces traces;
    private Sheets shown;
    private int revealed = -1;

    /**
     * @param before what is said and can be done before a run
     * @param findings enters the findings
     */
    public RunStage(WindowModel desk, Asker asker, Supplier<StatusLine> before, Runnable findings) {
        this.before = before;
        this.desk = desk;
        this.line = new RunLine(desk, asker, findings, this::isFar, this::isCramped, this::turn);
        Sheet left = new Sheet(
                new MigLayout("insets 14 20 0 20, gap 0, fill, wrap 1, hidemode 3", "[grow,fill]", "[][]12[grow,fill]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(title, "wmin 0");
        left.add(caption, "wmin 0");
        left.add(Scroll.of(sheet), "grow, push, hmin 110");
        halves.add(Scroll.of(new Filling(left)), "grow, push, w 56%!, hmin 0");
        halves.add(right, "grow, push, w 44%!, hmin 0");
        face.add(halves, NEAR);
        face.add(view, FAR);
        burnIn = new BurnInPanel(desk);
        face.add(burnIn.face(), HOLD);
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
            cards.show(face, NEAR);
            sheet.rows(rows.rows(line.pencilled(), Optional.empty()));
            return;
        }
        RunView now = desk.view().orElseThrow();
        rows.watched(run.get().watches());
        sheet.rows(rows.rows(now.steps(), Optional.of(now)));
        boolean holds = holdsLong(now);
        cards.show(face, far() ? FAR : holds ? HOLD : NEAR);
        if (holds) {
            burnIn.open(Optional.of(run.get().file())); // its button is offered in either view
            burnIn.moment();
        }
        if (far()) {
            view.show(FarModels.of(run.get(), now, sheets.design().content().rails()));
        } else if (!holds && traces != null) {
            traces.show(run.get(), now);
        }
        follow(now);
        line.moment(now);
    }

    /** While a load is held for long, the burn-in page stands in place of sheet and traces. */
    private static boolean holdsLong(RunView view) {
        int live = view.liveStep();
        return live >= 0
                && view.steps().get(live).forecast().step().hold().compareTo(LONG_HOLD) >= 0
                && view.prompt().isEmpty();
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

    /** While a run goes on, unless the person wants the whole sheet. */
    @Override
    public boolean far() {
        return desk.running() && isFar();
    }

    private boolean isCramped() {
        return face.getRootPane() != null && face.getRootPane().getHeight() < Look.px(CRAMPED);
    }

    private boolean isFar() {
        return !desk.remembered().get("view").equals(Optional.of(NEAR));
    }

    private void turn() {
        desk.remembered().put("view", isFar() ? NEAR : FAR);
        desk.message("");
    }

    @Override
    public StatusLine line() {
        StatusLine now = line.line();
        if (desk.run().isPresent()) {
            return endsHold() ? withEnd(now) : now;
        }
        StatusLine open = before.get();
        return new StatusLine(open.head(), now.caption(), open.progress(), open.acts());
    }

    private boolean endsHold() {
        return desk.running() && desk.view().filter(RunStage::holdsLong).isPresent() && burnIn.mayEnd();
    }

    /** Offered, never done by itself. */
    private StatusLine withEnd(StatusLine now) {
        List<Act> acts = new ArrayList<>(now.acts());
        acts.add(0, new Act("end-hold", Words.of("act.endhold"), "control E", false, () -> {
            desk.run().ifPresent(LiveRun::endHold);
            desk.message(Words.of("burnin.ending"));
        }));
        return new StatusLine(now.head(), now.caption(), now.progress(), acts);
    }

    /** The sheet, for whoever reads it aloud. */
    public RuledSheet sheet() {
        return sheet;
    }
}
