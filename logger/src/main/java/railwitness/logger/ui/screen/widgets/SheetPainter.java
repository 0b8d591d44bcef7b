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
        for (int c = 0; c < columns.size(); c++) {
            Column column = columns.get(c);
            int offset = lines - column.head().size();
            for (int line = 0; line < column.head().size(); line++) {
                int y = Look.px(4) + (offset + line + 1) * metrics.getHeight() - metrics.getDescent();
                write(metrics, column.head().get(line), geometry.column(c), y, column.right());
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
        for (int c = 0; c < Math.min(columns.size(), row.cells().size()); c++) {
            cell(row.cells().get(c), columns.get(c), geometry.place(index, c));
        }
        g.setColor(palette.rule());
        g.fillRect(0, place.y + place.height - 1, place.width, 1);
        if (selected) {
            g.setColor(focused ? palette.ink() : palette.strongRule());
            g.setStroke(new BasicStroke(Look.px(focused ? 2 : 1)));
            g.drawRoundRect(1, place.y + 1, place.width - 3, place.height - 4, Look.px(6), Look.px(6));
        }
    }

    private void caption(Row row, Rectangle place) {
        g.setFont(Type.CAPTION.font());
        g.setColor(palette.muted());
        g.drawString(row.cells().get(0).text(), place.x + SheetGeometry.inset(), place.y + place.height - Look.px(5));
    }

    private void cell(Cell cell, Column column, Rectangle place) {
        if (cell.drawing().isPresent()) {
            cell.drawing().get().draw(g, place);
            return;
        }
        g.setFont(cell.ink().font());
        g.setColor(cell.ink().colour(palette));
        FontMetrics metrics = g.getFontMetrics();
        int y = place.y + (place.height + metrics.getAscent() - metrics.getDescent()) / 2;
        write(metrics, cell.text(), place, y, column.right());
    }

    private void write(FontMetrics metrics, String text, Rectangle place, int y, boolean toTheRight) {
        String fitting = Elision.of(text, metrics, place.width);
        int x = toTheRight ? place.x + place.width - metrics.stringWidth(fitting) : place.x;
        g.drawString(fitting, x, y);
    }
}
