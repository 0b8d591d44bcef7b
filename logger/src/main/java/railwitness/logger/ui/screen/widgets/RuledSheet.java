package railwitness.logger.ui.screen.widgets;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.function.IntUnaryOperator;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import javax.swing.JScrollPane;
import javax.swing.Scrollable;
import javax.swing.SwingUtilities;
import railwitness.logger.ui.screen.theme.Look;

/**
 * A sheet of paper with a head, hairlines between its rows and no other lines. The arrow keys move from row to row, Enter
 * asks for more about one.
 */
public final class RuledSheet extends JComponent implements Scrollable {
    private final transient SheetGeometry geometry = new SheetGeometry();
    private transient List<Column> columns;
    private transient List<Row> rows = List.of();
    private transient IntConsumer chosen = row -> {};
    private transient IntConsumer moved = row -> {};
    private final JComponent head = new Head();
    private int selected = -1;

    public RuledSheet(String name, List<Column> columns) {
        this.columns = List.copyOf(columns);
        setName(name);
        setFocusable(true);
        key("UP", row -> next(row, -1));
        key("DOWN", row -> next(row, 1));
        key("HOME", row -> next(-1, 1));
        key("END", row -> next(rows.size(), -1));
        Keys.on(this, "ENTER", this::choose);
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                requestFocusInWindow();
                select(geometry.rowAt(e.getY()));
                choose();
            }
        });
        addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                if (selected < 0) {
                    select(next(-1, 1));
                }
                repaint();
            }

            @Override
            public void focusLost(FocusEvent e) {
                repaint();
            }
        });
    }

    /** @param more told the row for which Enter or a click asked for more */
    public RuledSheet onChosen(IntConsumer more) {
        chosen = more;
        return this;
    }

    /** @param row told when another row is selected */
    public RuledSheet onMoved(IntConsumer row) {
        moved = row;
        return this;
    }

    /** The head, to be put above a sheet that does not scroll by itself. */
    public JComponent head() {
        return head;
    }

    public List<Row> rows() {
        return rows;
    }

    /** The selected row, -1 when there is none yet. */
    public int selected() {
        return selected;
    }

    public void columns(List<Column> wanted) {
        if (!wanted.equals(columns)) {
            columns = List.copyOf(wanted);
            geometry.forget();
            revalidate();
            head.revalidate();
            repaint();
        }
    }

    /** Writes the sheet anew; what did not change is not painted again. */
    public void rows(List<Row> wanted) {
        List<Row> before = rows;
        rows = List.copyOf(wanted);
        if (before.size() != rows.size()) {
            geometry.forget();
            selected = Math.min(selected, rows.size() - 1);
            revalidate();
            repaint();
            head.repaint();
            return;
        }
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i) != before.get(i) && !rows.get(i).equals(before.get(i))) {
                rewritten(i, rows.get(i).group() == before.get(i).group());
            }
        }
    }

    /** One row has changed: where its columns stay as wide as they are, it alone is painted again. */
    private void rewritten(int row, boolean asHigh) {
        if (asHigh && geometry.fits(rows.get(row), row, this::getFontMetrics)) {
            repaint(geometry.row(row));
        } else {
            geometry.forget();
            revalidate();
            repaint();
            head.repaint();
        }
    }

    /** Brings a row into view. */
    public void reveal(int row) {
        measure();
        if (row >= 0 && row < rows.size()) {
            Rectangle place = geometry.row(row);
            place.grow(0, place.height);
            scrollRectToVisible(place);
        }
    }

    public void select(int row) {
        if (row >= 0 && row < rows.size() && !rows.get(row).group() && row != selected) {
            selected = row;
            if (geometry.narrowed()) {
                geometry.forget();
                revalidate();
            }
            getAccessibleContext().setAccessibleDescription(rows.get(row).words());
            reveal(row);
            moved.accept(row);
            repaint();
        }
    }

    private void choose() {
        if (selected >= 0) {
            chosen.accept(selected);
        }
    }

    private int next(int from, int step) {
        for (int row = from + step; row >= 0 && row < rows.size(); row += step) {
            if (!rows.get(row).group()) {
                return row;
            }
        }
        return selected;
    }

    private void key(String stroke, IntUnaryOperator target) {
        Keys.on(this, stroke, () -> select(target.applyAsInt(selected)));
    }

    private void measure() {
        geometry.measure(columns, rows, selected, getWidth(), this::getFontMetrics);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        measure();
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Rectangle seen = g.getClipBounds();
        SheetPainter painter = new SheetPainter(g, Look.palette(), columns, geometry);
        for (int i = 0; i < rows.size(); i++) {
            if (geometry.row(i).intersects(seen)) {
                painter.row(rows.get(i), i, i == selected, isFocusOwner());
            }
        }
        g.dispose();
    }

    /** In a view that scrolls the head stays where it is. */
    @Override
    public void addNotify() {
        super.addNotify();
        if (SwingUtilities.getUnwrappedParent(this) instanceof javax.swing.JViewport view
                && view.getParent() instanceof JScrollPane pane) {
            pane.setColumnHeaderView(head);
            pane.getColumnHeader().setOpaque(false);
        }
    }

    /** A narrower sheet may be a higher one. */
    @Override
    public void setBounds(int x, int y, int width, int height) {
        boolean other = width != getWidth();
        super.setBounds(x, y, width, height);
        if (other) {
            measure();
            SwingUtilities.invokeLater(() -> {
                if (geometry.height() != getHeight()) {
                    revalidate();
                }
                head.revalidate();
                head.repaint();
            });
        }
    }

    /** Whether some columns have given way to the others. */
    public boolean narrowed() {
        measure();
        return geometry.narrowed();
    }

    @Override
    public Dimension getPreferredSize() {
        measure();
        return new Dimension(geometry.naturalWidth(), geometry.height());
    }

    @Override
    public Dimension getMinimumSize() {
        measure();
        return new Dimension(geometry.narrowest(), geometry.height());
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return getPreferredSize();
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return geometry.rowHeight();
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return visible.height - geometry.rowHeight();
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        if (getParent() == null) {
            return true;
        }
        SheetGeometry there = new SheetGeometry();
        there.measure(columns, rows, selected, getParent().getWidth(), this::getFontMetrics);
        return getParent().getWidth() >= there.narrowest();
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return getParent() != null && getParent().getHeight() > getPreferredSize().height;
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                @Override
                public AccessibleRole getAccessibleRole() {
                    return AccessibleRole.TABLE;
                }
            };
            accessibleContext.setAccessibleName(getName());
        }
        return accessibleContext;
    }

    /** The head above the rows. */
    private final class Head extends JComponent {
        @Override
        protected void paintComponent(Graphics graphics) {
            measure();
            Graphics2D g = (Graphics2D) graphics.create();
            g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            new SheetPainter(g, Look.palette(), columns, geometry).head(getWidth());
            g.dispose();
        }

        @Override
        public Dimension getPreferredSize() {
            measure();
            return new Dimension(geometry.narrowest(), geometry.headHeight());
        }
    }
}
