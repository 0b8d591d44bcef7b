package railwitness.logger.ui.screen.window;

import java.awt.KeyEventDispatcher;
import java.awt.event.KeyEvent;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import javax.swing.KeyStroke;

/** Keys that work wherever the focus is. */
final class KeyWatch implements KeyEventDispatcher {
    private final BooleanSupplier escape;
    private final Function<KeyStroke, Boolean> others;

    /**
     * @param escape told first; answers whether it was meant for it
     * @param others told every other key; answers whether it was meant for it
     */
    KeyWatch(BooleanSupplier escape, Function<KeyStroke, Boolean> others) {
        this.escape = escape;
        this.others = others;
    }

    @Override
    public boolean dispatchKeyEvent(KeyEvent event) {
        if (event.getID() != KeyEvent.KEY_PRESSED) {
            return false;
        }
        if (event.getKeyCode() == KeyEvent.VK_ESCAPE) {
            return escape.getAsBoolean();
        }
        return others.apply(KeyStroke.getKeyStrokeForEvent(event));
    }
}
