package railwitness.logger.ui.screen.bench;

import java.awt.CardLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.form.FormAct;
import railwitness.logger.ui.screen.form.SheetForm;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Filling;
import railwitness.logger.ui.screen.widgets.FlowRow;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** How the bench stage is laid out: what stands on the bench at the left; ports and form, or the leads, at the right. */
final class BenchView extends JPanel {
    private final Label title = Label.of("", Type.TITLE);
    private final Label chosen = Label.of("", Type.TITLE);
    private final Note about = Note.muted("", Type.CAPTION);
    private final CardLayout cards = new CardLayout();
    private final JPanel beside = new JPanel(cards);

    BenchView() {
        super(new MigLayout("insets 0, gap 0, fill", "[grow 56,fill][grow 44,fill]"));
        chosen.setName("chosen");
        about.setName("about");
        beside.setOpaque(false);
    }

    /** @param lists the instruments */
    void left(SourceChoice source, RuledSheet lists, BenchEditor editor) {
        Sheet left = new Sheet(
                new MigLayout("insets 14 20 10 20, gap 0, fill, wrap 1", "[grow,fill]", "[]8[]14[]4[grow,fill]8[]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        JPanel head = new FlowRow(10, title);
        buttons(
                head,
                new FormAct("open sheet", Words.of("act.sheet.open.short"), "control O", editor::open),
                new FormAct("save sheet", Words.of("act.sheet.save"), "control S", editor::save));
        JPanel acts = new FlowRow(6);
        buttons(
                acts,
                new FormAct("add instrument", Words.of("bench.add.instrument"), "control I", editor::addInstrument),
                new FormAct("add by hand", Words.of("bench.add.byhand"), "control M", editor::addByHand),
                new FormAct("take out", Words.of("form.takeout"), "control DELETE", editor::takeOut));
        left.add(Label.of(Words.of("bench.title"), Type.TITLE), "wmin 0");
        left.add(source, "wmin 0");
        left.add(head, "growx, wmin 0");
        left.add(Scroll.of(lists), "grow, push, hmin 110");
        left.add(acts, "growx, wmin 0");
        add(Scroll.of(new Filling(left)), "grow, push, w 56%!, hmin 0");
    }

    private void buttons(JPanel row, FormAct... acts) {
        for (FormAct act : acts) {
            row.add(act.button());
            act.keyIn(this);
        }
    }

    void right(PortsPanel ports, SheetForm form, LeadsPanel leads) {
        Sheet instrument = new Sheet(
                new MigLayout(
                        "insets 14 18 0 12, gap 0, fill, hidemode 3",
                        "[grow,fill]",
                        "[pref!]14[pref!]0[pref!]4[grow,fill]"),
                Palette::paper);
        instrument.add(ports, "cell 0 0, wmin 0");
        instrument.add(chosen, "cell 0 1, wmin 0");
        instrument.add(about, "cell 0 2, growx, wmin 60");
        instrument.add(Scroll.of(form), "cell 0 3, grow, push, hmin 0");
        Sheet found = new Sheet(new MigLayout("insets 14 18 0 12, fill"), Palette::paper);
        found.add(Scroll.of(leads), "grow, push");
        beside.add(instrument, "form");
        beside.add(found, "leads");
        add(beside, "grow, push, w 44%!, hmin 0");
    }

    /** Arrow keys that go from the list at the left to the one at the right and back. */
    static void neighbours(JComponent left, JComponent right) {
        FormAct.of("to the right", "", right::requestFocusInWindow)
                .keyed("RIGHT")
                .keyIn(left);
        FormAct.of("to the left", "", left::requestFocusInWindow).keyed("LEFT").keyIn(right);
    }

    void showLeads(boolean wanted) {
        cards.show(beside, wanted ? "leads" : "form");
    }

    /**
     * @param bench its name
     * @param name what is chosen
     * @param words all that it says of itself, or why it does not answer; empty for nothing
     */
    void show(String bench, String name, String words) {
        title.setText(bench);
        chosen.setText(name);
        about.setText(words);
        about.setVisible(!words.isEmpty());
    }
}
