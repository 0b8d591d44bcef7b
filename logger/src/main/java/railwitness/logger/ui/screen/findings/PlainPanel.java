package railwitness.logger.ui.screen.findings;

import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.cause.Explained;
import railwitness.logger.reporting.findings.PlainWords;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Mark;
import railwitness.logger.ui.screen.widgets.Note;

/** What is off, by how much, and what explains it, in a few words; with a mark where something is off. */
final class PlainPanel extends JPanel {
    PlainPanel() {
        super(new MigLayout("insets 0, gap 0 4, wrap 1, fillx", "[grow,fill]"));
        setOpaque(false);
        setName("plain words");
    }

    void show(SessionFindings session) {
        removeAll();
        boolean off = session.findings().against().explained() != Explained.NOTHING_OFF;
        JPanel words = off ? new Mark() : this;
        PlainWords plain = PlainWords.of(session);
        words.add(note(plain.off(), off ? Type.TEXT_STRONG : Type.TEXT), "growx, wmin 60");
        if (!plain.why().isEmpty()) {
            words.add(note(plain.why(), Type.TEXT), "growx, wmin 60");
        }
        if (off) {
            add(words, "growx, wmin 60");
        }
        revalidate();
        repaint();
    }

    private static Note note(String plain, Type type) {
        return Note.of(plain.replace("+-", "\u00b1").replace(" ohm", " \u03a9"), type);
    }
}
