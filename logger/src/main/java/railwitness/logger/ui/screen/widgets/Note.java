package railwitness.logger.ui.screen.widgets;

import java.awt.Dimension;
import java.util.function.Function;
import javax.swing.JTextArea;
import javax.swing.JViewport;
import javax.swing.SwingUtilities;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;

/** Some lines of text that wrap; read only. */
public final class Note extends JTextArea {
    private static final int LEAST_WIDTH = 20;

    /** A bar that comes later takes so much of the view. */
    private static final int BAR = 14;

    private final Type type;
    private transient Dimension wanted;
    private transient int wantedFor;
    private transient java.awt.Font wantedIn;
    private final transient Function<Palette, java.awt.Color> colour;

    public Note(String text, Type type, Function<Palette, java.awt.Color> colour) {
        super(text);
        this.type = type;
        this.colour = colour;
        setEditable(false);
        setFocusable(false);
        setOpaque(false);
        setLineWrap(true);
        setWrapStyleWord(true);
        setBorder(null);
        ((javax.swing.text.DefaultCaret) getCaret()).setUpdatePolicy(javax.swing.text.DefaultCaret.NEVER_UPDATE);
        refresh();
    }

    public static Note of(String text, Type type) {
        return new Note(text, type, Palette::ink);
    }

    public static Note muted(String text, Type type) {
        return new Note(text, type, Palette::muted);
    }

    @Override
    public void setText(String text) {
        if (!text.equals(getText())) {
            wanted = null;
            super.setText(text);
        }
    }

    /** No layout makes it lower than its lines. */
    @Override
    public Dimension getMinimumSize() {
        return new Dimension(Look.px(LEAST_WIDTH), getPreferredSize().height);
    }

    /** Asked for again and again while everything round it is laid out, so it is worked out once for each width. */
    @Override
    public Dimension getPreferredSize() {
        if (wanted == null || wantedFor != getWidth() || !getFont().equals(wantedIn)) {
            wanted = super.getPreferredSize();
            wantedFor = getWidth();
            wantedIn = getFont();
        }
        return new Dimension(wanted);
    }

    /** A narrower text is a higher one. It is never wider than what is seen of a view that scrolls sideways. */
    @Override
    public void setBounds(int x, int y, int wide, int height) {
        int width = Math.min(wide, seen(x));
        boolean other = width != getWidth();
        super.setBounds(x, y, width, height);
        if (other && !getText().isEmpty()) {
            SwingUtilities.invokeLater(this::settled);
        }
    }

    private int seen(int x) {
        if (!(SwingUtilities.getAncestorOfClass(JViewport.class, this) instanceof JViewport view)
                || view.getView() == null
                || view.getView().getWidth() <= view.getWidth()) {
            return Integer.MAX_VALUE;
        }
        int left = SwingUtilities.convertPoint(getParent(), x, 0, view.getView()).x;
        int room = view.getWidth() - left - Look.px(BAR);
        return room >= Look.px(LEAST_WIDTH) ? room : Integer.MAX_VALUE;
    }

    private void settled() {
        if (getPreferredSize().height != getHeight()) {
            revalidate();
        }
    }

    /** A text that is only read moves nothing. */
    @Override
    public void scrollRectToVisible(java.awt.Rectangle place) {
        // the view stays where the person left it
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
            setOpaque(false);
            setBorder(null);
        }
    }
}
