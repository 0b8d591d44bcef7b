package railwitness.logger.ui.screen.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;

/** What is happening, what comes next, how long; and what the person can do. */
final class BottomLine {
    private final JPanel face = new JPanel(new MigLayout("insets 0 20 0 20, gap 20, fill, hidemode 3", "", "[84!]"));
    private final Label head = Label.of("", Type.STEP);
    private final Label caption = Label.muted("", Type.TEXT);
    private final ProgressLine progress = new ProgressLine();
    private static final int MOST_IN_A_ROW = 4;

    private final JPanel buttons = new JPanel(new MigLayout("insets 0, gap 10 6", "", "[]"));
    private List<Act> acts = List.of();

    BottomLine() {
        face.setOpaque(false);
        buttons.setOpaque(false);
        head.setName("line head");
        caption.setName("line caption");
        JPanel words = new JPanel(new MigLayout("insets 0, gap 0 4, fill, wrap 1", "[grow,fill]", "push[][]push"));
        words.setOpaque(false);
        words.add(head, "wmin 0, growx");
        words.add(caption, "wmin 0, growx");
        face.add(words, "growx, pushx, wmin 100, gapright 0");
        face.add(progress, "w 300!, h 44!");
        face.add(buttons, "alignx right, wmin pref");
    }

    JPanel face() {
        return face;
    }

    List<Act> acts() {
        return acts;
    }

    void show(StatusLine line) {
        head.setText(line.head());
        caption.setText(line.caption());
        caption.setToolTipText(line.caption().isEmpty() ? null : line.caption());
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
        boolean rows = wanted.size() > MOST_IN_A_ROW;
        int last = wanted.size() - (wanted.size() + 1) / 2;
        for (Act act : wanted) {
            JButton button = new ActButton(act, () -> perform(act.key()));
            String wrap = rows && made.size() == last - 1 ? ", wrap" : "";
            wrap += rows && made.isEmpty() && wanted.size() % 2 == 1 ? ", skip 1" : "";
            made.add(button);
            buttons.add(button, (rows ? "h 32!, growx" : "h 36!") + ", wmin pref" + wrap);
        }
        buttons.revalidate();
        buttons.repaint();
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
