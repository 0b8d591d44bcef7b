package railwitness.logger.ui.screen.form;

import java.awt.Rectangle;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JTextField;
import javax.swing.text.JTextComponent;
import railwitness.logger.recording.sheet.SheetKeys;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Typing;
import railwitness.logger.ui.screen.widgets.Words;

/** Where the value of one key is written, or chosen where only some words are allowed. */
public final class FieldEditor {
    private static final String FREE = "or ";

    private final Consumer<FieldEditor> changed;
    private final Map<String, String> keys = new HashMap<>();
    private final JComponent component;
    private SheetKeys.Field field;
    private final boolean percent;
    private String standing;
    private boolean filling;

    /**
     * @param offers words offered although others may be written
     * @param percent a share is shown and written in per cent
     * @param changed told when the person has written or chosen something
     */
    FieldEditor(SheetKeys.Field field, List<String> offers, boolean percent, Consumer<FieldEditor> changed) {
        this.percent = percent;
        this.field = field;
        this.changed = changed;
        this.standing = field.literal();
        component = offers.isEmpty() && field.choices().isEmpty() ? written() : chosen(offers);
        component.setName(name(field));
        component
                .getAccessibleContext()
                .setAccessibleName(FormWords.meaning(field.note()) + (unit().isEmpty() ? "" : ", ") + unit());
        component.setToolTipText(
                field.note().allowed().isEmpty() ? null : field.note().allowed());
        component.setFont(Type.TABLE.font());
        fill();
    }

    /** Such as {@code [[rail]] nominal_V 1}, the place left out for the first of its kind. */
    static String name(SheetKeys.Field field) {
        return field.note().table() + " " + field.note().key() + (field.place() > 0 ? " " + field.place() : "");
    }

    private JComponent written() {
        JTextField made = new JTextField(6);
        made.setHorizontalAlignment(isNumber() ? JTextField.RIGHT : JTextField.LEFT);
        listen(made);
        return made;
    }

    private JComponent chosen(List<String> offers) {
        JComboBox<String> made = new JComboBox<>();
        boolean required = field.note().otherwise().equals("required");
        if (!required) {
            made.addItem("");
        }
        List<String> words = field.choices();
        words.stream().filter(word -> !word.startsWith(FREE)).forEach(made::addItem);
        offers.forEach(offered -> made.addItem(worded(offered)));
        made.setEditable(!offers.isEmpty() || words.stream().anyMatch(word -> word.startsWith(FREE)));
        made.setRenderer(new ChoiceWords());
        if (made.isEditable()) {
            listen((JTextComponent) made.getEditor().getEditorComponent());
        }
        made.addActionListener(e -> tell());
        return made;
    }

    private void listen(JTextComponent text) {
        Typing.in(text, this::tell);
    }

    private void tell() {
        if (!filling && !literal().equals(standing)) {
            standing = literal();
            changed.accept(this);
        }
    }

    private void fill() {
        filling = true;
        String text = FieldText.shown(field, percent);
        if (component instanceof JTextField writing) {
            writing.setText(text);
            if (!writing.isFocusOwner()) {
                writing.setCaretPosition(0);
            }
        } else if (component instanceof JComboBox<?> choosing) {
            choosing.setSelectedItem(choosing.isEditable() ? worded(text) : text);
            if (!choosing.isEditable() && !text.equals(choosing.getSelectedItem())) {
                choosing.setSelectedIndex(-1);
            }
        }
        filling = false;
    }

    /** What the sheet says now, changed by something else than this field. */
    void show(SheetKeys.Field now) {
        field = now;
        if (!now.literal().equals(standing)) {
            standing = now.literal();
            fill();
        }
    }

    public SheetKeys.Field field() {
        return field;
    }

    /** The value in TOML; empty when the key is to go. */
    public String literal() {
        return FieldText.literal(field, typed(), percent);
    }

    private String typed() {
        if (component instanceof JTextField writing) {
            return writing.getText();
        }
        JComboBox<?> choosing = (JComboBox<?>) component;
        Object item = choosing.isEditable() ? choosing.getEditor().getItem() : choosing.getSelectedItem();
        String text = item == null ? "" : item.toString();
        return keys.getOrDefault(text, text);
    }

    /** A channel as people call it, where somebody may also write: what is written is taken back for what the sheet says. */
    private String worded(String key) {
        String words = ChannelNames.ofText(key);
        keys.put(words, key);
        return words;
    }

    JComponent component() {
        return component;
    }

    /** Brings the row it stands in into view when it gets the focus. */
    void reveals(JComponent row) {
        JComponent focused = component instanceof JComboBox<?> choosing && choosing.isEditable()
                ? (JComponent) choosing.getEditor().getEditorComponent()
                : component;
        focused.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                row.scrollRectToVisible(new Rectangle(0, 0, row.getWidth(), row.getHeight()));
            }
        });
    }

    boolean isNumber() {
        return field.note().type().matches("number|whole number");
    }

    /** As it is written beside a number. */
    String unit() {
        return Words.orElse("symbol." + field.note().unit(), field.note().unit());
    }

    /** It is an example, and the person has looked at it: it may stay as it is. */
    void lookedAt() {
        if (field.open() && !literal().isEmpty()) {
            changed.accept(this);
        }
    }

    boolean faulty() {
        return component.getClientProperty("JComponent.outline") != null;
    }

    /** @param words empty when nothing is wrong */
    void fault(String words) {
        component.putClientProperty("JComponent.outline", words.isEmpty() ? null : "error");
        component.getAccessibleContext().setAccessibleDescription(words.isEmpty() ? Words.of("unit.right") : words);
    }
}
