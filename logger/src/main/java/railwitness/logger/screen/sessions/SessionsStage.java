package railwitness.logger.screen.sessions;

import java.util.Optional;
import javax.swing.JComponent;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.screen.paper.Sheet;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.stage.Act;
import railwitness.logger.screen.stage.Desk;
import railwitness.logger.screen.stage.Line;
import railwitness.logger.screen.stage.Stage;
import railwitness.logger.screen.theme.Palette;

public final class SessionsStage implements Stage {
    private final Desk desk;
    private final Runnable next;
    private final Sheet face = new Sheet(new MigLayout("insets 14 20 14 20"), Palette::sheet);

    public SessionsStage(Desk desk, Runnable next) {
        this.desk = desk;
        this.next = next;
    }

    @Override
    public String key() {
        return "sessions";
    }

    @Override
    public JComponent face() {
        return face;
    }

    @Override
    public Optional<String> closed() {
        return desk.running() ? Optional.of(Words.of("closed.running")) : Optional.empty();
    }

    @Override
    public Line line() {
        return Line.of("", "", new Act("next", Words.of("act.findings"), "control ENTER", true, next));
    }
}
