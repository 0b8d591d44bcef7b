package railwitness.logger.ui.screen.window;

import java.awt.KeyEventDispatcher;
import java.awt.event.KeyEvent;
import java.util.function.Function;
import javax.swing.KeyStroke;

/** Keys that work wherever the focus is. */
final class KeyWatch implements KeyEventDispatcher {
    private final Runnable escape;
    private final Function<KeyStroke, Boolean> others;

    /** @param others told every other key; answers whether it was meant for it */
    KeyWatch(Runnable escape, Function<KeyStroke, Boolean> others) {
        this.escape = escape;
        this.others = others;
    }

    @Override
    public boolean dispatchKeyEvent(KeyEvent event) {
        if (event.getID() != KeyEvent.KEY_PRESSED) {
            return false;
        }
        if (event.getKeyCode() == KeyEvent.VK_ESCAPE) {
            escape.run();
            return true;
        }
        return others.apply(KeyStroke.getKeyStrokeForEvent(event));
    }
}
