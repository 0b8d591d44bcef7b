package railwitness.logger.ui.screen.form;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Words;

/** All keys of a small table in one line, their short names above where the line is the first of its kind. */
final class TableRow extends JPanel implements FormLine {
    private final transient List<FieldEditor> editors;
    private final transient Map<FieldEditor, String> wrong = new LinkedHashMap<>();
    private final Note fault = new Note("", Type.CAPTION, Palette::fault);

    TableRow(List<FieldEditor> editors, boolean named, String unit, List<FormAct> acts) {
        super(new MigLayout(
                "insets 0, gap 6 0, fillx, hidemode 3, wrap " + (editors.size() + 2),
                "[grow 60,fill]" + "[grow 10,fill]".repeat(editors.size() - 1) + "[26!][pref!]"));
        this.editors = editors;
        setOpaque(false);
        if (named) {
            editors.forEach(editor -> {
                String key = editor.field().note().key();
                add(Label.muted(Words.orElse("short." + key, key), Type.CAPTION), "wmin 0");
            });
            add(Label.muted("", Type.CAPTION), "span 2");
        }
        editors.forEach(editor -> {
            add(editor.component(), editor == editors.get(0) ? "h 30!, w 110:230:" : "h 30!, w 58:64:");
            editor.reveals(this);
        });
        add(Label.muted(unit, Type.TEXT), "wmin 0");
        JPanel buttons = new JPanel(new MigLayout("insets 0, gap 4"));
        buttons.setOpaque(false);
        acts.forEach(act -> buttons.add(act.button()));
        add(buttons);
        add(fault, "span, growx, wmin 60");
        fault.setVisible(false);
    }

    @Override
    public List<FieldEditor> editors() {
        return editors;
    }

    @Override
    public void fault(FieldEditor of, String words) {
        of.fault(words);
        wrong.put(of, words);
        String all = String.join(
                "; ", wrong.values().stream().filter(one -> !one.isEmpty()).toList());
        fault.setText(all);
        fault.setVisible(!all.isEmpty());
    }
}
