package railwitness.logger.ui.screen.widgets;

import java.util.function.Function;
import javax.swing.JLabel;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;

/** A line of text in one type and one colour of the theme, also after the theme has changed. */
public final class Label extends JLabel {
    private final Type type;
    private transient Function<Palette, java.awt.Color> colour;

    public Label(String text, Type type, Function<Palette, java.awt.Color> colour) {
        super(text);
        this.type = type;
        this.colour = colour;
        putClientProperty("html.disable", Boolean.TRUE);
        refresh();
    }

    public static Label of(String text, Type type) {
        return new Label(text, type, Palette::ink);
    }

    public static Label muted(String text, Type type) {
        return new Label(text, type, Palette::muted);
    }

    public void colour(Function<Palette, java.awt.Color> wanted) {
        colour = wanted;
        refresh();
    }

    @Override
    public void setText(String text) {
        if (!text.equals(getText())) {
            super.setText(text);
        }
    }

    @Override
    public void updateUI() {
        super.updateUI();
        refresh();
    }

    private void refresh() {
        if (type != null) {
            setFont(type.font());
            setForeground(colour.apply(Look.palette()));
        }
    }
}
