package railwitness.logger.ui.screen.form;

import java.awt.Component;
import java.awt.Container;
import java.awt.KeyboardFocusManager;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.sheet.SheetFault;
import railwitness.logger.recording.sheet.SheetEdit;
import railwitness.logger.recording.sheet.SheetKeys;
import railwitness.logger.recording.sheet.SheetRemark;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Keys;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Readable;

/** The keys of a sheet, table by table. */
public final class SheetForm extends Readable {
    private static final String VALUE = "^= (?:\"[^\"]*\"|\\[[^\\]]*\\]|\\S+) ";

    private final transient Consumer<FieldEditor> changed;
    private transient List<FormPart> shown = List.of();
    private transient List<FormLine> lines = List.of();

    /** @param changed told when the person has changed a value */
    public SheetForm(Consumer<FieldEditor> changed) {
        super(new MigLayout("insets 0 0 10 12, gap 0 4, wrap 1, fillx", "[grow,fill]"));
        this.changed = changed;
    }

    /** Shows these parts; where only values differ the fields stay, so that the person can go on typing. */
    public void show(List<FormPart> parts) {
        if (same(parts)) {
            List<SheetKeys.Field> fields =
                    parts.stream().flatMap(part -> part.fields().stream()).toList();
            int at = 0;
            for (FormLine line : lines) {
                for (FieldEditor editor : line.editors()) {
                    editor.show(fields.get(at++));
                }
            }
        } else {
            build(parts);
        }
        shown = List.copyOf(parts);
    }

    private boolean same(List<FormPart> parts) {
        if (parts.size() != shown.size()) {
            return false;
        }
        for (int i = 0; i < parts.size(); i++) {
            if (!parts.get(i).sameAs(shown.get(i))) {
                return false;
            }
        }
        return true;
    }

    private void build(List<FormPart> parts) {
        Component owner = KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
        List<Component> before = stops();
        int stop = before.indexOf(owner);
        removeAll();
        List<FormLine> made = new ArrayList<>();
        boolean lineBefore = false;
        for (FormPart part : parts) {
            boolean bare = part.inOneLine() && !part.fields().isEmpty();
            if (!part.title().isEmpty() || !bare && !part.acts().isEmpty()) {
                add(heading(part, !bare), part.title().isEmpty() ? "" : "gaptop 10");
            }
            if (bare) {
                TableRow row = new TableRow(editors(part), !lineBefore, part.unit(), part.acts());
                made.add(row);
                add(row, "wmin 60");
            } else {
                for (FieldEditor editor : editors(part)) {
                    FormRow row = new FormRow(editor);
                    made.add(row);
                    add(row, "wmin 60");
                }
            }
            lineBefore = bare;
        }
        lines = List.copyOf(made);
        lines.forEach(line -> line.editors().forEach(this::confirming));
        revalidate();
        repaint();
        if (stop >= 0) {
            refocus(owner.getName(), stop);
        } else {
            scrollRectToVisible(new Rectangle(0, 0, 1, 1));
        }
    }

    /** Everything that takes the keyboard, in its order. */
    private List<Component> stops() {
        List<Component> all = new ArrayList<>();
        collect(this, all);
        return all;
    }

    private static void collect(Container in, List<Component> all) {
        for (Component one : in.getComponents()) {
            if (one instanceof JTextField || one instanceof JComboBox || one instanceof JButton) {
                all.add(one);
            } else if (one instanceof Container inner) {
                collect(inner, all);
            }
        }
    }

    /** The focus stays at what it was on; where that has gone, at what stands in its place. */
    private void refocus(String name, int stop) {
        List<Component> all = stops();
        all.stream()
                .filter(one -> name != null && name.equals(one.getName()))
                .findFirst()
                .or(() -> all.isEmpty() ? Optional.empty() : Optional.of(all.get(Math.min(stop, all.size() - 1))))
                .ifPresent(Component::requestFocusInWindow);
    }

    private List<FieldEditor> editors(FormPart part) {
        return part.fields().stream()
                .map(field -> new FieldEditor(
                        field,
                        part.offers().getOrDefault(field.note().key(), List.of()),
                        part.unit().equals("%") && field.note().key().startsWith("at_"),
                        changed))
                .toList();
    }

    private static JComponent heading(FormPart part, boolean withActs) {
        JPanel heading = new JPanel(new MigLayout("insets 0, gap 6, fillx", "[grow,fill][][]"));
        heading.setOpaque(false);
        heading.add(Label.of(part.title(), Type.HEADING), "growx, pushx, wmin 0");
        if (withActs) {
            part.acts().forEach(act -> heading.add(act.button()));
        }
        return heading;
    }

    /** Enter says that the person has looked at a value, and goes on to the next that is still an example. */
    private void confirming(FieldEditor editor) {
        Keys.within(editor.component(), "ENTER", () -> {
            if (editor.component() instanceof JComboBox<?> choosing && choosing.isPopupVisible()) {
                choosing.setPopupVisible(false);
                return;
            }
            editor.lookedAt();
            focusOpen(editor);
        });
    }

    /** The next field after this one that is still to be filled in; the next field of all where there is none. */
    private void focusOpen(FieldEditor from) {
        List<FieldEditor> all =
                lines.stream().flatMap(line -> line.editors().stream()).toList();
        int at = all.indexOf(from);
        for (int i = 1; i < all.size(); i++) {
            FieldEditor next = all.get((at + i) % all.size());
            if (next.field().open()) {
                next.component().requestFocusInWindow();
                return;
            }
        }
        from.component().transferFocus();
    }

    /** Gives the focus to the first field that is still to be filled in. */
    public void focusFirstOpen() {
        lines.stream()
                .flatMap(line -> line.editors().stream())
                .filter(editor -> editor.field().open())
                .findFirst()
                .ifPresent(editor -> editor.component().requestFocusInWindow());
    }

    public void focusFirst() {
        lines.stream().flatMap(line -> line.editors().stream()).findFirst().ifPresent(editor -> editor.component()
                .requestFocusInWindow());
    }

    /** Gives the focus to the first field with a fault. */
    public void focusFault() {
        lines.stream()
                .flatMap(line -> line.editors().stream())
                .filter(FieldEditor::faulty)
                .findFirst()
                .ifPresent(editor -> editor.component().requestFocusInWindow());
    }

    /** Marks each fault at its field; those that belong to none of them are returned. */
    public List<SheetFault> faults(SheetEdit edit, List<SheetFault> faults) {
        List<SheetFault> left = new ArrayList<>(faults);
        for (FormLine line : lines) {
            for (FieldEditor editor : line.editors()) {
                List<SheetFault> mine = left.stream()
                        .filter(fault -> belongs(fault, editor.field(), edit))
                        .toList();
                left.removeAll(mine);
                line.fault(editor, mine.isEmpty() ? "" : words(mine.get(0), editor.field()));
            }
        }
        revalidate();
        return left;
    }

    /** Asks beside each field about what may be a slip. */
    public void questions(SheetEdit edit, List<SheetRemark> remarks) {
        for (FormLine line : lines) {
            for (FieldEditor editor : line.editors()) {
                String words = remarks.stream()
                        .filter(remark -> belongs(remark.fault(), editor.field(), edit))
                        .map(SheetRemark::words)
                        .findFirst()
                        .orElse("");
                line.asked(editor, words);
            }
        }
    }

    /** Without table, key and value: they stand beside it. */
    private static String words(SheetFault fault, SheetKeys.Field field) {
        String named = field.note().table() + " " + field.note().key() + " ";
        return fault.text().startsWith(named)
                ? fault.text().substring(named.length()).replaceFirst(VALUE, "")
                : fault.text();
    }

    private static boolean belongs(SheetFault fault, SheetKeys.Field field, SheetEdit edit) {
        var note = field.note();
        int line = edit.lineOf(note.table(), field.place(), note.key());
        int expected = line > 0 ? line : Math.max(1, edit.lineOf(note.table(), field.place()));
        return fault.line() == expected && fault.text().matches("(?s).*\\b" + note.key() + "\\b.*");
    }
}
