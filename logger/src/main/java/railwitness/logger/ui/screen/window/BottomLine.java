package railwitness.logger.ui.screen.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;

/** What is happening, what comes next, how long; and what the person can do. */
final class BottomLine {
    private final JPanel face = new JPanel(null);
    private final Label head = Label.of("", Type.STEP);
    private final Label caption = Label.muted("", Type.TEXT);
    private final ProgressLine progress = new ProgressLine();
    private final JPanel buttons = new JPanel(null);
    private List<Act> acts = List.of();

    BottomLine() {
        face.setOpaque(false);
        buttons.setOpaque(false);
        head.setName("line head");
        caption.setName("line caption");
        face.setLayout(new FootLayout(List.of(head, caption), progress, buttons));
        List.of(head, caption, progress, buttons).forEach(face::add);
    }

    JPanel face() {
        return face;
    }

    void grow(double times) {
        head.grow(times);
        caption.grow(times < 1 ? 1 : times);
        List.of(buttons.getComponents()).forEach(one -> ((ActButton) one).bare(times < 1));
    }

    List<Act> acts() {
        return acts;
    }

    void show(StatusLine line) {
        head.setText(line.head());
        caption.setText(line.caption());
        progress.setVisible(line.progress().isPresent());
        progress.show(line.progress());
        if (!same(line.acts())) {
            buttons(line.acts());
        }
        acts = line.acts();
    }

    private boolean same(List<Act> wanted) {
        if (wanted.size() != acts.size()) {
            return false;
        }
        for (int i = 0; i < wanted.size(); i++) {
            if (!wanted.get(i).sameAs(acts.get(i))) {
                return false;
            }
        }
        return true;
    }

    private void buttons(List<Act> wanted) {
        Optional<String> focused = focused();
        buttons.removeAll();
        List<JButton> made = new ArrayList<>();
        for (Act act : wanted) {
            JButton button = new ActButton(act, () -> perform(act.key()));
            made.add(button);
            buttons.add(button);
        }
        face.revalidate();
        face.repaint();
        focused.ifPresent(name -> made.stream()
                .filter(button -> button.getName().equals(name))
                .findFirst()
                .ifPresent(JButton::requestFocusInWindow));
    }

    private Optional<String> focused() {
        for (java.awt.Component one : buttons.getComponents()) {
            if (one.isFocusOwner()) {
                return Optional.of(one.getName());
            }
        }
        return Optional.empty();
    }

    /** Does the act as it is meant now, not as it was when its button was made. */
    private void perform(String key) {
        acts.stream()
                .filter(act -> act.key().equals(key))
                .findFirst()
                .ifPresent(act -> SwingUtilities.invokeLater(act.done()));
    }
}
