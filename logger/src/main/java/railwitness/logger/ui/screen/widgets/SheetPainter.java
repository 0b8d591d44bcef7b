package railwitness.logger.ui.screen.widgets;

import java.awt.BasicStroke;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;

/** Paints head and rows of a ruled sheet. */
final class SheetPainter {
    private final Graphics2D g;
    private final Palette palette;
    private final List<Column> columns;
    private final SheetGeometry geometry;

    SheetPainter(Graphics2D g, Palette palette, List<Column> columns, SheetGeometry geometry) {
        this.g = g;
        this.palette = palette;
        this.columns = columns;
        this.geometry = geometry;
    }

    void head(int width) {
        g.setFont(Type.CAPTION.font());
        g.setColor(palette.muted());
        FontMetrics metrics = g.getFontMetrics();
        int lines = geometry.headLines();
        for (int c : geometry.kept()) {
            List<String> head = geometry.head(c, metrics);
            int offset = lines - head.size();
            for (int line = 0; line < head.size(); line++) {
                int y = Look.px(4) + (offset + line + 1) * metrics.getHeight() - metrics.getDescent();
                write(
                        metrics,
                        head.get(line),
                        geometry.column(c),
                        y,
                        columns.get(c).right());
            }
        }
        g.setColor(palette.strongRule());
        g.fillRect(0, geometry.headHeight() - 1, width, 1);
    }

    /**
     * @param selected what is beside the sheet is about it
     * @param focused the keyboard is at it too
     */
    void row(Row row, int index, boolean selected, boolean focused) {
        Rectangle place = geometry.row(index);
        if (row.live()) {
            g.setColor(palette.tint());
            g.fillRect(0, place.y, place.width, place.height - 1);
            g.setColor(palette.live());
            g.fillRect(0, place.y, Look.px(4), place.height - 1);
        }
        if (row.group()) {
            caption(row, place);
            return;
        }
        int below = more(row, place, selected);
        for (int c : geometry.kept()) {
            if (c < row.cells().size()) {
                cell(row.cells().get(c), c, geometry.place(index, c, below));
            }
        }
        g.setColor(palette.rule());
        g.fillRect(0, place.y + place.height - 1, place.width, 1);
        if (selected) {
            g.setColor(focused ? palette.muted() : palette.strongRule());
            g.setStroke(new BasicStroke(Look.px(1)));
            g.drawRoundRect(1, place.y + 1, place.width - 3, place.height - 4, Look.px(6), Look.px(6));
            if (focused) {
                g.fillRect(1, place.y + Look.px(6), Look.px(3), place.height - Look.px(12));
            }
        }
    }

    /** What has no column here; answers how high it is. */
    private int more(Row row, Rectangle place, boolean selected) {
        g.setFont(Type.CAPTION.font());
        FontMetrics metrics = g.getFontMetrics();
        List<String> lines = geometry.more(row, selected, metrics);
        g.setColor(palette.muted());
        int top = place.y + place.height - lines.size() * metrics.getHeight() - Look.px(4);
        for (int i = 0; i < lines.size(); i++) {
            g.drawString(lines.get(i), SheetGeometry.inset(), top + i * metrics.getHeight() + metrics.getAscent());
        }
        return lines.size() * metrics.getHeight();
    }

    private void caption(Row row, Rectangle place) {
        g.setFont(Type.CAPTION.font());
        g.setColor(palette.muted());
        FontMetrics metrics = g.getFontMetrics();
        int inside = place.width - 2 * SheetGeometry.inset();
        List<String> lines = Wrapped.of(row.cells().get(0).text(), metrics, inside);
        int y = place.y + place.height - Look.px(5) - (lines.size() - 1) * metrics.getHeight();
        for (String line : lines) {
            g.drawString(line, place.x + SheetGeometry.inset(), y);
            y += metrics.getHeight();
        }
    }

    private void cell(Cell cell, int column, Rectangle place) {
        if (cell.drawing().isPresent()) {
            cell.drawing().get().draw(g, place);
            return;
        }
        g.setFont(cell.ink().font());
        g.setColor(cell.ink().colour(palette));
        FontMetrics metrics = g.getFontMetrics();
        int aside = geometry.aside(column);
        List<String> lines = geometry.lines(cell, column, metrics);
        int high = (lines.size() - 1) * metrics.getHeight();
        int y = place.y + (place.height - high + metrics.getAscent() - metrics.getDescent()) / 2;
        Rectangle numbers = new Rectangle(place.x, place.y, place.width - aside, place.height);
        for (String line : lines) {
            write(metrics, line, numbers, y, columns.get(column).right());
            y += metrics.getHeight();
        }
        if (aside > 0 && !cell.aside().isEmpty()) {
            g.setFont(Type.PENCIL_TEXT.font());
            g.setColor(palette.pencil());
            write(g.getFontMetrics(), cell.aside(), place, y - metrics.getHeight(), true);
        }
    }

    private void write(FontMetrics metrics, String text, Rectangle place, int y, boolean toTheRight) {
        int x = toTheRight ? place.x + place.width - metrics.stringWidth(text) : place.x;
        g.drawString(text, x, y);
    }
}
