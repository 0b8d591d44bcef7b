package railwitness.logger.ui.screen.window;

import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import railwitness.logger.ui.screen.widgets.Trouble;

/**
 * A mistake of the screen is said, once for each moment, and stops nothing: the run has a thread of its own, and goes on to
 * its orderly end.
 */
final class Mistakes implements Thread.UncaughtExceptionHandler {
    private final Consumer<String> said;

    private Mistakes(Consumer<String> said) {
        this.said = said;
    }

    /** From now on every mistake that nobody caught is told, in one line. */
    static void to(Consumer<String> said) {
        Thread.setDefaultUncaughtExceptionHandler(new Mistakes(said));
    }

    @Override
    public void uncaughtException(Thread thread, Throwable mistake) {
        String words = Trouble.mistake(mistake);
        SwingUtilities.invokeLater(() -> said.accept(words));
    }
}
