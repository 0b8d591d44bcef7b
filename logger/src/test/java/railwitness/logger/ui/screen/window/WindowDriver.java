package railwitness.logger.ui.screen.window;

import java.awt.Component;
import java.awt.Container;
import java.awt.event.KeyEvent;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import javax.swing.SwingUtilities;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.Robot;
import org.assertj.swing.edt.GuiActionRunner;
import railwitness.logger.ui.screen.findings.FindingsStage;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.readings.ReadingsPanel;
import railwitness.logger.ui.screen.theme.Theme;
import railwitness.logger.ui.screen.widgets.RuledSheet;

/** A window on a display, driven by real key events. */
final class WindowDriver implements AutoCloseable {
    private static final long PATIENCE_MILLIS = 120_000;

    private final Robot robot = BasicRobot.robotWithNewAwtHierarchy();
    private final java.awt.Robot keyboard;
    private final Window window;

    WindowDriver(Path folder) {
        try {
            keyboard = new java.awt.Robot();
        } catch (java.awt.AWTException e) {
            throw new IllegalStateException("no keyboard on this display", e);
        }
        keyboard.setAutoDelay(10);
        window = GuiActionRunner.execute(
                () -> Opening.of(folder, Theme.LIGHT, "test").open());
        until(
                "the window is there",
                () -> window.frame().isShowing() && window.frame().isActive());
    }

    Window window() {
        return window;
    }

    /** A real key; nothing is awaited, for a window that draws thirty times a second is never idle. */
    void key(int code, int... modifiers) {
        for (int modifier : modifiers) {
            keyboard.keyPress(modifier);
        }
        keyboard.keyPress(code);
        keyboard.keyRelease(code);
        for (int modifier : modifiers) {
            keyboard.keyRelease(modifier);
        }
        keyboard.delay(120);
    }

    /** Quicker than other keys, for many of them. */
    void tab() {
        keyboard.keyPress(KeyEvent.VK_TAB);
        keyboard.keyRelease(KeyEvent.VK_TAB);
        keyboard.waitForIdle();
    }

    void controlEnter() {
        key(KeyEvent.VK_ENTER, KeyEvent.VK_CONTROL);
    }

    /** Gives the focus to something, as Tab does in the end. */
    void focus(String name) {
        until(name + " is there", () -> named(name) != null);
        ask(() -> {
            Component found = named(window.frame(), name);
            ((javax.swing.JComponent) found).scrollRectToVisible(new java.awt.Rectangle(1, 1));
            found.requestFocusInWindow();
            return true;
        });
        until(name + " has the focus", () -> focused(name));
    }

    /** Focus and the space bar. */
    void press(String name) {
        focus(name);
        key(KeyEvent.VK_SPACE);
    }

    /** Small letters, digits, blanks and the signs of a path. */
    void type(String text) {
        for (char letter : text.toUpperCase(java.util.Locale.ROOT).toCharArray()) {
            keyboard.keyPress(letter);
            keyboard.keyRelease(letter);
        }
        keyboard.delay(120);
    }

    /** Into a field of a dialog that has come up: all of it is replaced by the text, then comes a last key. */
    void type(String text, int all, int last) {
        until(
                "the field of the dialog has the focus",
                () -> ask(() -> java.awt.KeyboardFocusManager.getCurrentKeyboardFocusManager()
                                        .getFocusOwner()
                                instanceof javax.swing.JTextField field
                        && javax.swing.SwingUtilities.getWindowAncestor(field) instanceof java.awt.Dialog));
        key(all, KeyEvent.VK_CONTROL);
        type(text);
        key(last);
    }

    /** As the window manager does when its cross is clicked. */
    void cross() {
        SwingUtilities.invokeLater(
                () -> window.frame().dispatchEvent(new WindowEvent(window.frame(), WindowEvent.WINDOW_CLOSING)));
    }

    <T> T ask(Callable<T> question) {
        return GuiActionRunner.execute(question);
    }

    ReadingsPanel readings() {
        return ((FindingsStage) window.stage("findings")).readings();
    }

    void rehearsal(double pace) {
        ask(() -> {
            window.desk().rehearsal(window.desk().rehearsal().withPace(pace));
            return true;
        });
    }

    Optional<RunView> run() {
        return ask(() -> window.desk().run().map(run -> run.view()));
    }

    String text(String name) {
        Component found = named(name);
        return found instanceof javax.swing.JLabel label
                ? ask(label::getText)
                : ask(((javax.swing.text.JTextComponent) found)::getText);
    }

    RuledSheet sheet(String name) {
        return (RuledSheet) named(name);
    }

    /** Whether the component of this name has the focus. */
    boolean focused(String name) {
        Component found = named(name);
        return found != null && ask(found::isFocusOwner);
    }

    Component named(String name) {
        return ask(() -> named(window.frame(), name));
    }

    private static Component named(Container in, String name) {
        for (Component one : in.getComponents()) {
            if (name.equals(one.getName())) {
                return one;
            }
            Component found = one instanceof Container inner ? named(inner, name) : null;
            if (found != null) {
                return found;
            }
        }
        return null;
    }

    void until(String what, BooleanSupplier holds) {
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (!holds.getAsBoolean()) {
            if (System.currentTimeMillis() > end) {
                throw new AssertionError("waited in vain until " + what);
            }
            try {
                Thread.sleep(25);
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        }
    }

    /** @param name of the picture, written for people to look at */
    void picture(String name) {
        Path file = Path.of("target", "screens", name + ".png");
        ask(() -> {
            java.nio.file.Files.createDirectories(file.getParent());
            Screenshots.picture(window.frame().getContentPane(), file);
            return true;
        });
    }

    @Override
    public void close() {
        ask(() -> {
            window.desk().run().ifPresent(run -> run.switchOff("the test is over"));
            return true;
        });
        window.desk().run().ifPresent(run -> {
            try {
                run.awaitOver(20);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        robot.cleanUp();
    }
}
