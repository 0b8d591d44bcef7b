package railwitness.logger.ui.screen.window;

import java.awt.Dimension;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.stage.Question;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Sheet;

/** One question, large enough to be read from the load bank. */
final class QuestionPanel {
    private final Sheet face = new Sheet(
            new MigLayout("insets 22 24 22 24, gap 12 12, fillx, wrap 1", "[grow,fill]"),
            Palette::sheet,
            Sheet.Edge.TOP);
    private final JTextField field = new JTextField(24);
    private static final float LARGEST = 98 / 1280f;
    private static final double SHARE = 0.42;
    /** Width and height of an average letter with its share of the line, in its size. */
    private static final double LETTER = 0.56 * 1.2;

    private final JComponent first;
    private final boolean large;

    /** @param room of the whole window */
    QuestionPanel(Question question, Dimension room, Runnable over) {
        Note sentence = Note.of(question.sentence(), Type.PROMPT);
        large = question.large();
        if (large) {
            sentence.setFont(Type.BAND.font().deriveFont(size(question.sentence(), room)));
        }
        sentence.setName("question");
        face.add(sentence, "growx, wmin 100");
        JPanel row = new JPanel(new MigLayout("insets 0, gap 12"));
        row.setOpaque(false);
        question.field().ifPresent(name -> field(row, name));
        Optional<JButton> usual = Optional.empty();
        for (Question.Answer answer : question.answers()) {
            JButton button = button(answer, over);
            usual = usual.isPresent() ? usual : Optional.of(button);
            row.add(button, large ? "h 64!, wmin 220" : "h 44!, wmin 130");
        }
        face.add(row);
        JButton firstButton = usual.orElseThrow();
        field.addActionListener(e -> firstButton.doClick(0));
        first = question.field().isPresent() ? field : firstButton;
    }

    /** As large as the window is wide, yet no more than its share of the window's height. */
    private static float size(String sentence, Dimension room) {
        double size = LARGEST * room.width;
        double least = Type.PROMPT.font().getSize2D();
        double letters = LETTER * Math.max(20, sentence.length());
        while (size > least && size * size * letters > SHARE * room.width * room.height) {
            size--;
        }
        return (float) Math.max(least, size);
    }

    private void field(JPanel row, String name) {
        Label label = Label.muted(name, Type.TEXT);
        label.setLabelFor(field);
        field.setName("answer");
        field.getAccessibleContext().setAccessibleName(name);
        field.setFont(Type.STEP.font());
        row.add(label);
        row.add(field, "h 44!");
    }

    private JButton button(Question.Answer answer, Runnable over) {
        JButton button = new JButton(answer.label());
        button.setName("answer " + answer.label());
        button.setFont(Type.STEP.font());
        button.getInputMap().put(javax.swing.KeyStroke.getKeyStroke("ENTER"), "pressed");
        button.getInputMap().put(javax.swing.KeyStroke.getKeyStroke("released ENTER"), "released");
        button.addActionListener(e -> {
            over.run();
            answer.chosen().accept(field.getText());
        });
        return button;
    }

    Sheet face() {
        return face;
    }

    void focus() {
        first.requestFocusInWindow();
    }
}
