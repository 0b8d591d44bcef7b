package railwitness.logger.ui.screen.unit;

import java.awt.CardLayout;
import java.util.List;
import javax.swing.ButtonGroup;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.form.SheetForm;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Filling;
import railwitness.logger.ui.screen.widgets.FlowRow;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** How the unit stage is laid out: the form of unit or plan at the left, what it comes to at the right. */
final class UnitView extends JPanel {
    private final Label title = Label.of("", Type.TITLE);
    private final Label caption = Label.muted("", Type.TEXT);
    private final JRadioButton unit = new JRadioButton(Words.of("unit.sheet"), true);
    private final JRadioButton plan = new JRadioButton(Words.of("unit.plan"));
    private final CardLayout cards = new CardLayout();
    private final JPanel beside = new JPanel(cards);

    UnitView() {
        super(new MigLayout("insets 0, gap 0, fill", "[grow 56,fill][grow 44,fill]"));
        unit.setName("the unit");
        plan.setName("the plan");
        beside.setOpaque(false);
    }

    void fill(SheetForm form, PredictionPanel prediction, PlanPanel planned) {
        choice();
        Sheet left = new Sheet(
                new MigLayout("insets 14 20 0 20, gap 0, fill, wrap 2", "[grow,fill][]", "[][]8[grow,fill]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(new FlowRow(14, title, unit, plan), "growx, wmin 0, span 2");
        left.add(caption, "wmin 0, span 2");
        left.add(Scroll.of(form), "grow, push, span 2, hmin 110");
        beside.add(Scroll.of(prediction), "unit");
        beside.add(Scroll.of(planned), "plan");
        Sheet right = new Sheet(new MigLayout("insets 14 18 8 12, fill"), Palette::paper);
        right.add(beside, "grow, push");
        add(Scroll.of(new Filling(left)), "grow, push, w 56%!, hmin 0");
        add(right, "grow, push, w 44%!, hmin 0");
    }

    private void choice() {
        ButtonGroup group = new ButtonGroup();
        for (JRadioButton one : List.of(unit, plan)) {
            group.add(one);
            one.setOpaque(false);
            one.setFont(Type.TEXT.font());
        }
    }

    /** @param turned told when the other of the two was chosen */
    void onTurned(Runnable turned) {
        for (JRadioButton one : List.of(unit, plan)) {
            one.addActionListener(e -> {
                turn();
                turned.run();
            });
        }
    }

    private void turn() {
        cards.show(beside, onPlan() ? "plan" : "unit");
    }

    /** Whether the plan is looked at, not the unit. */
    boolean onPlan() {
        return plan.isSelected();
    }

    void turnToUnit() {
        unit.setSelected(true);
        turn();
    }

    void show(String name, String files) {
        title.setText(name);
        caption.setText(files);
    }
}
