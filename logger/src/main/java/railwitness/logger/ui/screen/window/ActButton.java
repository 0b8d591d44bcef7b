package railwitness.logger.ui.screen.window;

import javax.swing.JButton;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Keys;

/** The button of something that can be done, with its key. */
final class ActButton extends JButton {
    private final transient Act act;
    private boolean bare;

    ActButton(Act act, Runnable done) {
        super(act.label() + (act.stroke().isEmpty() ? "" : "   " + Keys.words(act.stroke())));
        this.act = act;
        this.bare = false;
        setToolTipText(Keys.words(act.stroke()));
        setName("act " + act.key());
        getAccessibleContext().setAccessibleName(act.label());
        if (act.usual()) {
            putClientProperty(
                    "FlatLaf.style",
                    "background: $Button.default.background; foreground: $Button.default.foreground;"
                            + " focusedBackground: $Button.default.background;"
                            + " hoverBackground: $Button.default.hoverBackground;"
                            + " pressedBackground: $Button.default.pressedBackground;"
                            + " borderColor: $Button.default.borderColor");
        }
        addActionListener(e -> done.run());
        setFont(Type.TEXT.font());
    }

    /** Without its key, where the window is low; the key works all the same. */
    void bare(boolean wanted) {
        if (wanted != bare) {
            bare = wanted;
            setText(act.label() + (bare || act.stroke().isEmpty() ? "" : "   " + Keys.words(act.stroke())));
        }
    }

    @Override
    public void updateUI() {
        super.updateUI();
        setFont(Type.TEXT.font());
    }
}
