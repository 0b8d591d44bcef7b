package railwitness.logger.ui.screen.window;

import java.awt.Dimension;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Question;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.widgets.Sheet;

/** The foot of the window: the line, or while the person must act, the question in its place. */
final class Foot implements Asker {
    private final Sheet face =
            new Sheet(new MigLayout("insets 0, gap 0, fill", "[grow,fill]", "[]"), Palette::paper, Sheet.Edge.TOP);
    private final BottomLine line = new BottomLine();
    private final Deque<Question> waiting = new ArrayDeque<>();
    private final Runnable settled;

    /** @param settled told when the last question has gone, to give the focus back */
    Foot(Runnable settled) {
        this.settled = settled;
        face.add(line.face(), "grow, push");
    }

    Sheet face() {
        return face;
    }

    BottomLine line() {
        return line;
    }

    /** What comes next, so many times as large. */
    void grow(double times) {
        line.grow(times);
    }

    /** Answers as usual what one large key may answer; says whether there was such a question. */
    boolean answered() {
        Question question = waiting.peekFirst();
        if (question == null || !question.handsFree()) {
            return false;
        }
        withdraw(question.key());
        question.answers().get(0).chosen().accept("");
        return true;
    }

    boolean asking() {
        return !waiting.isEmpty();
    }

    @Override
    public void ask(Question question) {
        Optional<Question> earlier =
                waiting.stream().filter(one -> one.key().equals(question.key())).findFirst();
        if (earlier.filter(one -> one.sentence().equals(question.sentence())).isPresent()) {
            return;
        }
        earlier.ifPresent(waiting::remove);
        waiting.addLast(question);
        show();
    }

    @Override
    public void askFirst(Question question) {
        waiting.removeIf(one -> one.key().equals(question.key()));
        waiting.addFirst(question);
        show();
    }

    @Override
    public void withdraw(String key) {
        if (waiting.removeIf(question -> question.key().equals(key))) {
            show();
        }
    }

    private Dimension room() {
        return face.getParent() == null ? new Dimension() : face.getParent().getSize();
    }

    private void show() {
        face.removeAll();
        if (waiting.isEmpty()) {
            face.add(line.face(), "grow, push");
            settled.run();
        } else {
            Question question = waiting.peekFirst();
            QuestionPanel panel = new QuestionPanel(question, room(), () -> withdraw(question.key()));
            face.add(panel.face(), "grow, push");
            face.revalidate();
            javax.swing.SwingUtilities.invokeLater(panel::focus);
        }
        face.revalidate();
        face.repaint();
    }
}
