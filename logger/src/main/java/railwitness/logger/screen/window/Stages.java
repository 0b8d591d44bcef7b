package railwitness.logger.screen.window;

import java.util.List;
import java.util.function.Consumer;
import railwitness.logger.screen.bench.BenchStage;
import railwitness.logger.screen.cautions.CautionsStage;
import railwitness.logger.screen.findings.FindingsStage;
import railwitness.logger.screen.run.RunStage;
import railwitness.logger.screen.sessions.SessionsStage;
import railwitness.logger.screen.stage.Asker;
import railwitness.logger.screen.stage.Desk;
import railwitness.logger.screen.stage.Stage;
import railwitness.logger.screen.unit.UnitStage;

/** The stages in the order of the work. */
record Stages(Desk desk, Asker asker, Consumer<String> enter) {
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
