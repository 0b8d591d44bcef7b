package railwitness.logger.ui.screen.window;

import java.util.List;
import java.util.function.Consumer;
import railwitness.logger.ui.screen.bench.BenchStage;
import railwitness.logger.ui.screen.cautions.CautionsStage;
import railwitness.logger.ui.screen.findings.FindingsStage;
import railwitness.logger.ui.screen.run.RunStage;
import railwitness.logger.ui.screen.sessions.SessionsStage;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.unit.UnitStage;

/** The stages in the order of the work. */
record Stages(WindowModel desk, Asker asker, Consumer<String> enter) {
    List<Stage> all() {
        FindingsStage findings = new FindingsStage(desk);
        return List.of(
                new UnitStage(desk, asker, () -> enter.accept("bench")),
                new BenchStage(desk, asker, () -> enter.accept("cautions")),
                new CautionsStage(desk, () -> enter.accept("run")),
                new RunStage(desk, asker, () -> enter.accept("findings")),
                findings,
                new SessionsStage(desk, () -> enter.accept("findings"), findings::certificate));
    }
}
