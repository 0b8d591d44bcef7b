package railwitness.logger.ui.screen.findings;

import java.util.List;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.reporting.findings.WoundText;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Words;

/** Which winding is which: turns, resistance and polarity of each, as measured. */
final class WoundPanel extends JPanel {
    private static final int COLUMNS = 5;

    WoundPanel() {
        super(new MigLayout(
                "insets 0, gap 14 6, wrap " + COLUMNS + ", fillx, hidemode 3", "[grow,fill][right][right][right][]"));
        setOpaque(false);
        setName("windings");
        setVisible(false);
    }

    void show(SessionFindings session) {
        removeAll();
        session.wound().ifPresent(wound -> {
            add(Label.of(Words.of("wound.title"), Type.HEADING), "span, wmin 0");
            List.of("winding", "meant", "counted", "ohms", "polarity")
                    .forEach(column -> add(Label.muted(Words.of("wound." + column), Type.CAPTION)));
            new WoundText(wound).rows().forEach(row -> row.forEach(cell -> add(cell(cell))));
            add(Note.muted(Words.of("wound.insulation"), Type.CAPTION), "span, growx, wmin 60");
        });
        setVisible(getComponentCount() > 0);
        revalidate();
        repaint();
    }

    private static Label cell(String text) {
        return Label.of(text.replace("+-", "\u00b1"), Type.TEXT);
    }
}
