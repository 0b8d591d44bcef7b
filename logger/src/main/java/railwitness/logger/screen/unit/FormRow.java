package railwitness.logger.screen.unit;

import java.util.OptionalDouble;
import java.util.function.Consumer;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.screen.paper.Label;
import railwitness.logger.screen.paper.Note;
import railwitness.logger.screen.paper.Numbers;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.theme.Palette;
import railwitness.logger.screen.theme.Type;
import railwitness.logger.sheet.SheetKeys;

/** One key of the design sheet: what it means, its value, its unit; its fault below, in words. */
final class FormRow extends JPanel {
    private final transient SheetKeys.Field field;
    private final JTextField value = new JTextField(12);
    private final Note fault = new Note("", Type.CAPTION, Palette::fault);

    /** @param changed told the value as TOML; empty when the key is to go */
    FormRow(SheetKeys.Field field, Consumer<FormRow> changed) {
        super(new MigLayout("insets 0, gap 8 0, fillx, wrap 3, hidemode 3", "[grow,fill][150!,fill][60!]"));
        this.field = field;
        setOpaque(false);
        String meaning = field.note().meaning();
        value.setName(field.note().table() + " " + field.note().key() + (field.place() > 0 ? " " + field.place() : ""));
        value.getAccessibleContext().setAccessibleName(meaning + ", " + unit());
        value.setToolTipText(field.note().allowed());
        value.setFont(Type.TABLE.font());
        value.setText(shown(field.literal()));
        value.setHorizontalAlignment(text() ? JTextField.LEFT : JTextField.RIGHT);
        value.addFocusListener(new java.awt.event.FocusAdapter() {
            @Override
            public void focusGained(java.awt.event.FocusEvent e) {
                scrollRectToVisible(new java.awt.Rectangle(0, 0, getWidth(), getHeight()));
            }
        });
        value.getDocument().addDocumentListener(new DocumentListener() {
            @Override
            public void insertUpdate(DocumentEvent e) {
                changed.accept(FormRow.this);
            }

            @Override
            public void removeUpdate(DocumentEvent e) {
                changed.accept(FormRow.this);
            }

            @Override
            public void changedUpdate(DocumentEvent e) {
                changed.accept(FormRow.this);
            }
        });
        add(Label.of(meaning, Type.TEXT), "wmin 0");
        add(value, "h 30!");
        add(Label.muted(unit(), Type.TEXT));
        add(fault, "span 3, growx, wmin 60");
        fault("");
    }

    SheetKeys.Field field() {
        return field;
    }

    private boolean text() {
        return field.note().type().equals("text");
    }

    private boolean number() {
        return field.note().type().contains("number");
    }

    private String unit() {
        return switch (field.note().unit()) {
            case "ohm" -> "\u03a9";
            case "uF" -> "\u00b5F";
            case "uH" -> "\u00b5H";
            case "degC" -> "\u00b0C";
            case "mm2" -> "mm\u00b2";
            default -> field.note().unit();
        };
    }

    private String shown(String literal) {
        if (text()) {
            return literal.replaceAll("^[\"']|[\"']$", "");
        }
        OptionalDouble number = number() ? Numbers.parsed(literal.replace("_", "")) : OptionalDouble.empty();
        return number.isPresent() ? Numbers.plain(number.getAsDouble()) : literal;
    }

    /** The value in TOML; what is no number goes into the sheet as it is, so that the sheet's reader says what is wrong. */
    String literal() {
        String typed = value.getText().strip();
        if (typed.isEmpty()) {
            return "";
        }
        if (text()) {
            return "\"" + typed.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
        }
        OptionalDouble number = number() ? Numbers.parsed(typed) : OptionalDouble.empty();
        if (number.isPresent()) {
            return java.math.BigDecimal.valueOf(number.getAsDouble())
                    .stripTrailingZeros()
                    .toPlainString();
        }
        return number() ? "\"" + typed.replace("\"", "'") + "\"" : typed;
    }

    void fault(String words) {
        fault.setText(words);
        fault.setVisible(!words.isEmpty());
        value.putClientProperty("JComponent.outline", words.isEmpty() ? null : "error");
        value.getAccessibleContext().setAccessibleDescription(words.isEmpty() ? Words.of("unit.right") : words);
    }
}
