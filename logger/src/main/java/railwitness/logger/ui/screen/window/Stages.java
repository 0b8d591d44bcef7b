package railwitness.logger.ui.screen.window;

import java.util.List;
import java.util.function.Consumer;
import railwitness.logger.ui.screen.bench.BenchStage;
import railwitness.logger.ui.screen.cautions.CautionsStage;
import railwitness.logger.ui.screen.findings.FindingsStage;
import railwitness.logger.ui.screen.run.RunStage;
import railwitness.logger.ui.screen.sessions.SessionsStage;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.unit.UnitStage;
import railwitness.logger.ui.screen.widgets.Words;

/** The stages in the order of the work. */
record Stages(WindowModel desk, Asker asker, Consumer<String> enter) {
    List<Stage> all() {
        CautionsStage cautions = new CautionsStage(desk, () -> enter.accept("run"));
        FindingsStage findings = new FindingsStage(desk);
        return List.of(
                new UnitStage(desk, asker, () -> enter.accept("bench"), () -> enter.accept("sessions")),
                new BenchStage(desk, asker, () -> enter.accept("cautions")),
                cautions,
                new RunStage(desk, asker, () -> before(cautions), () -> enter.accept("findings")),
                findings,
                new SessionsStage(desk, () -> enter.accept("findings"), findings::certificate));
    }

    /** What the run stage says before a run: what is still open, and the button that begins. */
    private StatusLine before(CautionsStage cautions) {
        if (desk.unfinished().isPresent()) {
            Act unit = new Act("unit", Words.of("act.tounit"), "control ENTER", true, () -> enter.accept("unit"));
            return StatusLine.of(desk.unfinished().get(), "", unit);
        }
        Act read = new Act("cautions", Words.of("act.tocautions"), "control G", false, () -> enter.accept("cautions"));
        cautions.entered();
        StatusLine line = cautions.line();
        List<Act> acts = new java.util.ArrayList<>(line.acts());
        acts.add(0, read);
        return new StatusLine(line.head(), line.caption(), line.progress(), acts);
    }
}
