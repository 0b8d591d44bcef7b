package railwitness.logger.ui.screen.sessions;

import java.util.Optional;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Words;

/** What is known of the chosen session, and what came of the last thing that was done with one. */
final class AboutSession extends Readable {
    private final Label title = Label.of("", Type.HEADING);
    private final JPanel facts =
            new JPanel(new MigLayout("insets 0, gap 14 5, wrap 2, fillx", "[shrink 0][grow,fill]", "[top]"));
    private final Label saidTitle = Label.of("", Type.HEADING);
    private final Note said = Note.of("", Type.TEXT);
    private Optional<SessionEntry> shown = Optional.empty();

    AboutSession() {
        super(new MigLayout("insets 0 0 0 10, gap 0 6, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        said.setName("said");
        facts.setOpaque(false);
        add(saidTitle, "wmin 0");
        add(said, "growx, wmin 60, gapbottom 14");
        add(title, "wmin 0");
        add(facts, "growx, wmin 0");
        add(Note.muted(Words.of("sessions.hint"), Type.TEXT), "growx, wmin 60, gaptop 10");
        said("", "");
        title.setText(Words.of("about.none"));
    }

    /** What came of it, until the next thing is done. */
    void said(String head, String words) {
        saidTitle.setText(head);
        said.setText(words);
        saidTitle.setVisible(!head.isEmpty());
        said.setVisible(!words.isEmpty());
        revalidate();
    }

    void show(Optional<SessionEntry> entry) {
        if (entry.equals(shown)) {
            return;
        }
        shown = entry;
        title.setText(entry.flatMap(SessionEntry::head)
                .map(SessionHead::unitName)
                .orElse(entry.map(one -> one.file().getFileName().toString()).orElse(Words.of("about.none"))));
        facts.removeAll();
        entry.ifPresent(this::facts);
        revalidate();
        repaint();
    }

    private void facts(SessionEntry entry) {
        entry.head().ifPresent(head -> {
            fact("about.serial", head.unitSerial());
            fact("about.condition", head.unitCondition());
            fact("about.began", SessionRows.date(head));
            fact("about.state", Words.of("state." + entry.state().name()));
        });
        entry.verdict().ifPresent(fitness -> fact("about.verdict", Words.of("fitness." + fitness.name())));
        entry.head().ifPresent(head -> {
            fact("about.bench", Words.of(head.rehearsal() ? "about.virtual" : "about.real"));
            fact("about.by", head.acknowledgedBy());
            fact("about.id", head.id());
        });
        fact("about.file", entry.file().getFileName().toString());
        fact("about.trouble", entry.trouble());
    }

    private void fact(String key, String value) {
        if (!value.isEmpty()) {
            facts.add(Label.muted(Words.of(key), Type.TEXT));
            facts.add(Note.of(value, Type.TEXT), "growx, wmin 60");
        }
    }
}
