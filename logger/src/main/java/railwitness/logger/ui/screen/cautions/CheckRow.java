package railwitness.logger.ui.screen.cautions;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JCheckBox;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Typing;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.caution.Check;
import railwitness.safety.caution.Checklist;

/** One check: a box to tick, or a field for a cold resistance with its judgement beside it. */
final class CheckRow extends JPanel {
    private final transient Check check;
    private final JCheckBox box = new JCheckBox();
    private final JTextField ohms = new JTextField(8);
    private final Label judgement = Label.muted("", Type.TEXT);

    CheckRow(Check check) {
        super(new MigLayout(
                "insets 0, gap 8, fillx",
                check.isRequired() ? "[][grow,fill]" : "[grow,fill][60:90:90]8[]8[50:130:130,fill]"));
        this.check = check;
        setOpaque(false);
        if (check.isRequired()) {
            confirmation();
        } else {
            resistance();
        }
    }

    private void confirmation() {
        box.setName("check " + check.text());
        box.getAccessibleContext().setAccessibleName(check.text());
        Note text = Note.of(check.text(), Type.TEXT);
        text.addMouseListener(new java.awt.event.MouseAdapter() {
            @Override
            public void mousePressed(java.awt.event.MouseEvent e) {
                box.doClick(0);
            }
        });
        add(box, "aligny top");
        add(text, "growx, wmin 60, gaptop 2");
    }

    private void resistance() {
        ohms.setName("ohms " + check.text());
        ohms.getAccessibleContext().setAccessibleName(check.text() + ", \u03a9");
        ohms.setHorizontalAlignment(JTextField.RIGHT);
        ohms.setFont(Type.TABLE.font());
        ohms.addFocusListener(new java.awt.event.FocusAdapter() {
            @Override
            public void focusGained(java.awt.event.FocusEvent e) {
                scrollRectToVisible(new java.awt.Rectangle(0, 0, getWidth(), getHeight()));
            }
        });
        Typing.in(ohms, this::judge);
        add(Note.of(check.text(), Type.TEXT), "growx, wmin 60, aligny center");
        add(ohms, "h 32!, w 60:90:90");
        add(Label.muted("\u03a9", Type.TEXT));
        add(judgement, "wmin 0");
        judge();
    }

    Check check() {
        return check;
    }

    Checklist.Answer answer() {
        return new Checklist.Answer(check, box.isSelected(), value());
    }

    private OptionalDouble value() {
        return Numbers.parsed(ohms.getText());
    }

    /** What was typed and is no number. */
    Optional<String> unread() {
        return ohms.getText().isBlank() || value().isPresent()
                ? Optional.empty()
                : Optional.of(Words.of("checklist.nonumber", check.text(), ohms.getText()));
    }

    private void judge() {
        if (ohms.getText().isBlank()) {
            judgement.colour(Palette::muted);
            judgement.setText(
                    Words.of("checklist.least", Numbers.plain(check.leastOhms().orElse(0))));
            return;
        }
        List<String> against = value().isPresent()
                ? new Checklist(List.of(check)).against(List.of(answer()))
                : List.of(Words.of("checklist.nonumber.short"));
        judgement.colour(against.isEmpty() ? Palette::ink : Palette::fault);
        judgement.setText(
                against.isEmpty()
                        ? Words.of("checklist.good")
                        : value().isPresent() ? Words.of("checklist.low") : against.get(0));
        judgement.setToolTipText(against.isEmpty() ? null : against.get(0));
    }

    void clear() {
        box.setSelected(false);
        ohms.setText("");
    }
}
