package railwitness.logger.ui.screen.cautions;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.caution.Briefing;
import railwitness.safety.caution.Check;
import railwitness.safety.caution.Checklist;

/** What is done by hand before power, ticked and filled in, and the name of who powers the unit. */
final class ChecklistPanel extends Readable {
    private final transient Checklist checklist;
    private final transient List<CheckRow> rows = new ArrayList<>();
    private final JTextField name = new JTextField(24);

    ChecklistPanel(Checklist checklist) {
        super(new MigLayout("insets 0 0 0 12, gap 0, wrap 1, fillx", "[grow,fill]"));
        this.checklist = checklist;
        add(Label.of(Words.of("checklist.title"), Type.TITLE), "gapbottom 8, wmin 0");
        for (Check check : checklist.checks()) {
            if (!check.isRequired()
                    && rows.stream().noneMatch(row -> !row.check().isRequired())) {
                add(Label.of(Words.of("checklist.cold"), Type.HEADING), "gaptop 14, wmin 0");
                add(Note.muted(Words.of("checklist.cold.caption"), Type.CAPTION), "gapbottom 4, wmin 60");
            }
            CheckRow row = new CheckRow(check);
            rows.add(row);
            add(row, "gapbottom 4, wmin 60");
        }
        Label label = Label.of(Words.of("checklist.name"), Type.HEADING);
        label.setLabelFor(name);
        name.setName("person");
        name.getAccessibleContext().setAccessibleName(Words.of("checklist.name"));
        name.setFont(Type.TABLE.font());
        add(label, "gaptop 16, wmin 0");
        add(Note.muted(Words.of("checklist.name.caption"), Type.CAPTION), "gapbottom 4, wmin 60");
        add(name, "w 100:320:320, growx 0, h 36!, gapbottom 14");
    }

    String person() {
        return name.getText().strip();
    }

    List<Checklist.Answer> answers() {
        return rows.stream().map(CheckRow::answer).toList();
    }

    /** What is still open, in words; empty when nothing stands against power. */
    List<String> open(Briefing briefing) {
        List<String> open = new ArrayList<>(briefing.refusals());
        open.addAll(checklist.against(answers()));
        rows.stream().map(CheckRow::unread).flatMap(Optional::stream).forEach(open::add);
        if (person().isEmpty()) {
            open.add(Words.of("checklist.unnamed"));
        }
        return open;
    }

    /** Every run is acknowledged anew. */
    void clear() {
        rows.forEach(CheckRow::clear);
    }
}
