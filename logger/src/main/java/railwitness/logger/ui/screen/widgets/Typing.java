package railwitness.logger.ui.screen.widgets;

import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import javax.swing.text.JTextComponent;

/** Tells of every change of a text, whoever makes it. */
public final class Typing implements DocumentListener {
    private final Runnable changed;

    private Typing(Runnable changed) {
        this.changed = changed;
    }

    /** From now on every change of this text is told. */
    public static void in(JTextComponent text, Runnable changed) {
        text.getDocument().addDocumentListener(new Typing(changed));
    }

    @Override
    public void insertUpdate(DocumentEvent e) {
        changed.run();
    }

    @Override
    public void removeUpdate(DocumentEvent e) {
        changed.run();
    }

    @Override
    public void changedUpdate(DocumentEvent e) {
        changed.run();
    }
}
