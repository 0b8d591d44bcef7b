package railwitness.logger.ui.screen.form;

import java.util.List;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Words;

/** One key of a sheet: what it means, its value, its unit; its fault below, in words. */
final class FormRow extends JPanel implements FormLine {
    private final transient FieldEditor editor;
    private final Note fault = new Note("", Type.CAPTION, Palette::fault);
    private final Note ask = new Note("", Type.CAPTION_STRONG, Palette::ink);
    private final Note open = Note.muted(Words.of("form.open"), Type.CAPTION);

    FormRow(FieldEditor editor) {
        super(new MigLayout(
                "insets 0, gap 8 0, fillx, wrap 3, hidemode 3", "[grow 200,fill][76:130:130,fill][40:130:130,fill]"));
        this.editor = editor;
        setOpaque(false);
        add(Note.of(FormWords.meaning(editor.field().note()), Type.TEXT), "growx, wmin 100, aligny center");
        if (editor.isNumber()) {
            add(editor.component(), "h 30!");
            add(Label.muted(editor.unit(), Type.TEXT), "wmin 40");
        } else {
            add(editor.component(), "h 30!, span 2, growx, wmin 60");
        }
        add(fault, "span 3, growx, wmin 60");
        ask.setName("ask " + editor.component().getName());
        ask.setVisible(false);
        add(ask, "span 3, growx, wmin 60");
        open.setName("open " + editor.component().getName());
        add(open, "span 3, growx, wmin 60");
        editor.reveals(this);
        fault(editor, "");
    }

    @Override
    public List<FieldEditor> editors() {
        return List.of(editor);
    }

    @Override
    public void asked(FieldEditor of, String words) {
        ask.setText(words);
        ask.setVisible(!words.isEmpty() && !fault.isVisible());
    }

    @Override
    public void fault(FieldEditor of, String words) {
        fault.setText(words);
        fault.setVisible(!words.isEmpty());
        open.setVisible(words.isEmpty() && of.field().open());
        of.fault(words);
    }
}
