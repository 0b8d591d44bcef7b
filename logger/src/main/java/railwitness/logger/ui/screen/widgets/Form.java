package railwitness.logger.ui.screen.widgets;

import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.List;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Type;

/** Choices and fields one below the other, each with what it means before it. */
public final class Form extends JPanel {
    /** Nothing is told while a program fills the form. */
    private boolean filling;

    public Form() {
        super(new MigLayout("insets 0, gap 14 8, wrap 2, fillx, hidemode 3", "[shrink 0][grow,fill]"));
        setOpaque(false);
    }

    /** Fills the form without telling anybody. */
    public void fill(Runnable contents) {
        filling = true;
        try {
            contents.run();
        } finally {
            filling = false;
        }
    }

    private void tell(Runnable changed) {
        if (!filling) {
            changed.run();
        }
    }

    /** One of some. */
    public JComboBox<String> choice(String name, String meaning, List<String> items, Runnable changed) {
        JComboBox<String> choice = new JComboBox<>(items.toArray(new String[0]));
        choice.addActionListener(e -> tell(changed));
        row(name, meaning, choice);
        return choice;
    }

    /** One line of text. */
    public JTextField field(String name, String meaning, Runnable changed) {
        JTextField field = new JTextField(12);
        Typing.in(field, () -> tell(changed));
        row(name, meaning, field);
        return field;
    }

    /** Yes or no. */
    public JCheckBox tick(String name, String meaning, Runnable changed) {
        JCheckBox tick = new JCheckBox(meaning);
        tick.setName(name);
        tick.setOpaque(false);
        tick.setFont(Type.TEXT.font());
        tick.addActionListener(e -> tell(changed));
        seen(tick);
        add(tick, "skip 1, growx 0, wmin 0");
        return tick;
    }

    /** Anything else that is asked for, with its meaning before it. */
    public void row(String name, String meaning, JComponent asked) {
        Label label = Label.muted(meaning, Type.TEXT);
        label.setLabelFor(asked);
        asked.setName(name);
        asked.getAccessibleContext().setAccessibleName(meaning);
        asked.setFont(Type.TEXT.font());
        seen(asked);
        add(label);
        add(asked, "h 30!, wmin 60");
    }

    private void seen(JComponent asked) {
        asked.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                scrollRectToVisible(asked.getBounds());
            }
        });
    }
}
