package railwitness.logger.ui.screen.findings;

import java.util.List;
import java.util.stream.Collectors;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Mark;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Words;

/** Readings that cannot all be true; then probable causes, the likeliest first, each with what speaks for it, against it, and what to check next. */
final class CausesPanel extends JPanel {
    private static final int MOST = 3;

    CausesPanel() {
        super(new MigLayout("insets 0, gap 0 10, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        setOpaque(false);
        setName("causes");
    }

    void show(List<Contradiction> contradictions, List<Cause> causes, String ending) {
        removeAll();
        contradictions.stream().limit(MOST).forEach(one -> add(contradiction(one), "wmin 60"));
        if (!ending.isEmpty()) {
            Mark mark = new Mark();
            Note words = Note.of(ending, Type.TEXT_STRONG);
            words.setName("findings state");
            mark.add(words, "growx, wmin 60");
            add(mark, "wmin 60");
        }
        for (int i = 0; i < Math.min(ending.isEmpty() ? MOST : 2, causes.size()); i++) {
            add(one(causes.get(i), i), "wmin 60");
        }
        setVisible(getComponentCount() > 0);
        revalidate();
        repaint();
    }

    private static Mark contradiction(Contradiction contradiction) {
        Mark mark = new Mark();
        Note words = Note.of(Words.of("contradiction.text", contradiction.text()), Type.TEXT_STRONG);
        words.setName("contradiction");
        mark.add(words, "growx, wmin 60");
        mark.add(Note.muted(Words.of("contradiction.check", contradiction.check()), Type.TEXT), "growx, wmin 60");
        return mark;
    }

    private static Mark one(Cause cause, int place) {
        Mark mark = new Mark();
        String where = cause.rail().map(rail -> RailNames.full(rail) + ": ").orElse("");
        mark.add(
                Label.of(Words.of(place == 0 ? "cause.first" : "cause.other", where + cause.text()), Type.HEADING),
                "wmin 0");
        String supports = cause.supports().isEmpty() ? Words.of("cause.nothing") : String.join("; ", cause.supports());
        String against = cause.against().isEmpty() ? Words.of("cause.nothing") : String.join("; ", cause.against());
        String alike = cause.alike().isEmpty()
                ? ""
                : " "
                        + Words.of(
                                "cause.alike",
                                cause.alike().stream().map(code -> code.text()).collect(Collectors.joining(", ")));
        JPanel said = new JPanel(new MigLayout("insets 0, gap 12 2, wrap 2, fillx", "[shrink 0][grow,fill]"));
        said.setOpaque(false);
        told(said, "cause.for", ChannelNames.inText(supports));
        told(said, "cause.against", ChannelNames.inText(against));
        told(said, "cause.next", ChannelNames.inText(cause.checkNext()) + alike);
        mark.add(said, "growx, wmin 60");
        return mark;
    }

    private static void told(JPanel said, String key, String words) {
        said.add(Label.muted(Words.of(key), Type.TEXT), "aligny top");
        said.add(Note.of(words, Type.TEXT), "growx, wmin 60");
    }
}
