package railwitness.logger.ui.screen.findings;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.reporting.findings.WoundText;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Words;

/** Which winding is which: turns, resistance and polarity of each, as measured. */
final class WoundPanel extends JPanel {
    private static final List<String> KEYS = List.of("winding", "meant", "counted", "ohms", "polarity");

    WoundPanel() {
        super(new MigLayout("insets 0, gap 14 2, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        setOpaque(false);
        setName("windings");
        setVisible(false);
    }

    /** Each winding as lines that wrap, so that nothing is lost in a narrow window. */
    void show(SessionFindings session) {
        removeAll();
        session.wound().ifPresent(wound -> {
            add(Note.of(Words.of("wound.title"), Type.HEADING), "growx, wmin 60");
            new WoundText(wound).rows().forEach(this::winding);
            add(Note.muted(Words.of("wound.insulation"), Type.CAPTION), "gaptop 8, growx, wmin 60");
        });
        setVisible(getComponentCount() > 0);
        revalidate();
        repaint();
    }

    private void winding(List<String> row) {
        List<String> said = new ArrayList<>();
        for (int i = 1; i < KEYS.size(); i++) {
            if (!row.get(i).isEmpty()) {
                said.add(Words.of(
                        "wound.one." + KEYS.get(i),
                        row.get(i).replace(" +- ", "\u00a0\u00b1\u00a0").replace("-", "\u2212")));
            }
        }
        add(Note.of(row.get(0), Type.TEXT_STRONG), "gaptop 6, growx, wmin 60");
        add(Note.of(String.join(", ", said), Type.TEXT), "growx, wmin 60");
    }
}
