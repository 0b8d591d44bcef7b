package railwitness.logger.ui.screen.bench;

import java.util.List;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.form.FormAct;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Mark;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Words;

/** What the check of the leads has found so far, and which terminals the wiring joins. */
final class LeadsPanel extends Readable {
    private final RuledSheet found = new RuledSheet("leads", LeadRows.columns());
    private final Mark joined = new Mark();

    /** @param close puts it away */
    LeadsPanel(FormAct close) {
        super(new MigLayout("insets 0 0 10 10, gap 0 4, wrap 2, fillx, hidemode 3", "[grow,fill][]"));
        add(Label.of(Words.of("leads.title"), Type.TITLE), "wmin 0");
        add(close.button());
        add(Note.muted(Words.of("leads.caption"), Type.TEXT), "span 2, growx, wmin 60, gapbottom 6");
        add(found.head(), "span 2, growx");
        add(found, "span 2, growx, gapbottom 14");
        add(Label.of(Words.of("leads.joined"), Type.HEADING), "span 2");
        add(joined, "span 2, growx");
    }

    void joined(List<String> sentences) {
        joined.removeAll();
        List<String> all = sentences.isEmpty() ? List.of(Words.of("leads.joined.none")) : sentences;
        all.forEach(one -> joined.add(Note.of(one, Type.TEXT), "growx, wmin 60"));
        joined.revalidate();
        // a text that wraps knows its height only once it has its width
        SwingUtilities.invokeLater(this::revalidate);
    }

    void rows(List<Row> rows) {
        boolean grown = rows.size() != found.rows().size();
        found.rows(rows);
        if (grown) {
            revalidate();
        }
    }
}
