package railwitness.logger.ui.screen.widgets;

import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.List;
import java.util.function.Function;
import javax.swing.JLabel;
import javax.swing.SwingUtilities;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;

/**
 * A line of text in one type and one colour of the theme, also after the theme has changed. Where its place is narrower it
 * goes on in further lines: nothing of it is cut.
 */
public final class Label extends JLabel {
    private final Type type;
    private double grown = 1;
    private transient List<String> lines = List.of();
    private transient String linesOf;
    private transient int linesFor;
    private transient java.awt.Font linesIn;
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

    /** So many times as large as its type is. */
    public void grow(double times) {
        if (times != grown) {
            grown = times;
            refresh();
            revalidate();
        }
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

    /** Asked for again and again while everything round it is laid out, so the last answer is kept. */
    private List<String> lines(int width) {
        boolean same =
                width == linesFor && getText().equals(linesOf) && getFont().equals(linesIn);
        if (!same) {
            FontMetrics metrics = getFontMetrics(getFont());
            lines = width <= 0 ? List.of(getText()) : Wrapped.of(getText(), metrics, width);
            linesFor = width;
            linesOf = getText();
            linesIn = getFont();
        }
        return lines;
    }

    /** How high it is in a place so wide. */
    public int heightAt(int width) {
        return lines(width).size() * getFontMetrics(getFont()).getHeight();
    }

    /** How wide it is in one line. */
    public int naturalWidth() {
        return getFontMetrics(getFont()).stringWidth(getText());
    }

    @Override
    public Dimension getPreferredSize() {
        FontMetrics metrics = getFontMetrics(getFont());
        int lines = getText().isEmpty() ? 1 : lines(getWidth()).size();
        return new Dimension(metrics.stringWidth(getText()), lines * metrics.getHeight());
    }

    /** No layout makes it lower than its lines. */
    @Override
    public Dimension getMinimumSize() {
        return getPreferredSize();
    }

    @Override
    public void setBounds(int x, int y, int width, int height) {
        boolean other = width != getWidth();
        super.setBounds(x, y, width, height);
        if (other && getPreferredSize().height != height) {
            SwingUtilities.invokeLater(this::revalidate);
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setFont(getFont());
        g.setColor(getForeground());
        FontMetrics metrics = g.getFontMetrics();
        List<String> lines = lines(getWidth());
        int y = (getHeight() - lines.size() * metrics.getHeight()) / 2 + metrics.getAscent();
        for (String line : lines) {
            boolean right = getHorizontalAlignment() == RIGHT || getHorizontalAlignment() == TRAILING;
            g.drawString(line, right ? getWidth() - metrics.stringWidth(line) : 0, y);
            y += metrics.getHeight();
        }
        g.dispose();
    }

    private void refresh() {
        if (type != null) {
            setFont(
                    grown == 1
                            ? type.font()
                            : type.font().deriveFont((float) (type.font().getSize2D() * grown)));
            setForeground(colour.apply(Look.palette()));
        }
    }
}
