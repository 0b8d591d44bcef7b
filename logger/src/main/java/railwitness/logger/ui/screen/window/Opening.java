package railwitness.logger.ui.screen.window;

import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import javax.swing.SwingUtilities;
import railwitness.logger.ui.screen.live.RunStarter;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Theme;
import railwitness.logger.ui.screen.theme.WarmType;

/**
 * How the window is opened.
 *
 * @param folder where sessions are kept
 * @param version of the program, kept in every session
 * @param percent size of everything; empty takes what the desktop says
 * @param session to be looked at from the start
 */
public record Opening(Path folder, Theme theme, String version, OptionalInt percent, Optional<Path> session) {
    public static Opening of(Path folder, Theme theme, String version) {
        return new Opening(folder, theme, version, OptionalInt.empty(), Optional.empty());
    }

    public Opening scaled(OptionalInt wanted) {
        return new Opening(folder, theme, version, wanted, session);
    }

    public Opening on(Optional<Path> wanted) {
        return new Opening(folder, theme, version, percent, wanted);
    }

    /** Opens the window; to be called on the event thread. */
    public Window open() {
        Look.scale(percent);
        Look.install(theme);
        Window window = new Window(new WindowModel(new RunStarter(version), folder), theme);
        KeptSheets.lay(window.desk());
        Mistakes.to(window.desk()::message);
        window.resume(session.isPresent());
        window.open();
        WarmType.begin();
        window.offerInterrupted(session);
        session.ifPresent(file -> window.desk().open(file, () -> window.enter("findings")));
        return window;
    }

    /** Opens the window and waits, on another thread than the event thread, until it is closed. */
    public void untilClosed() throws InterruptedException {
        CountDownLatch closed = new CountDownLatch(1);
        SwingUtilities.invokeLater(() -> open().frame().addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosed(WindowEvent e) {
                closed.countDown();
            }
        }));
        closed.await();
    }
}
