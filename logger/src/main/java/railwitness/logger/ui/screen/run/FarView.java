package railwitness.logger.ui.screen.run;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Words;

/** The step that goes on, for whoever stands at the load two metres away; the sheet beside it as a narrow column. */
final class FarView extends JComponent {
    private static final double COLUMN = 344.0 / 1600;
    private static final double ROW = 39.0 / 1600;
    private static final double TEXT = 21.0 / 1600;

    private static final long LEAST_NANOS = 200_000_000;

    private long shownNanos;
    private transient Optional<FarModel> shown = Optional.empty();

    FarView() {
        setName("far view");
        setFocusable(true);
    }

    /** A figure that changes thirty times a second is not read from two metres: it is shown anew five times. */
    void show(FarModel model) {
        long now = System.nanoTime();
        boolean sameStep =
                shown.filter(before -> before.of().equals(model.of())).isPresent();
        if (sameStep && now - shownNanos < LEAST_NANOS) {
            return;
        }
        if (!shown.equals(Optional.of(model))) {
            shownNanos = now;
            shown = Optional.of(model);
            getAccessibleContext().setAccessibleName(model.step() + ", " + model.of());
            repaint();
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Look.palette();
        int column = (int) Math.round(getWidth() * COLUMN);
        g.setColor(palette.paper());
        g.fillRect(column, 0, getWidth() - column, getHeight());
        g.setColor(palette.sheet());
        g.fillRect(0, 0, column, getHeight());
        g.setColor(palette.rule());
        g.fillRect(column - 1, 0, 1, getHeight());
        if (shown.isPresent()) {
            FarModel model = shown.get();
            column(g, palette, model.near(), column);
            Rectangle place = new Rectangle(column, 0, getWidth() - column, getHeight());
            new FarPicture(g, palette, place, model.lines().size()).paint(model);
        }
        g.dispose();
    }

    /** The live step stays among those that are seen. */
    private void column(Graphics2D g, Palette palette, List<FarModel.Near> near, int width) {
        int row = (int) Math.round(getWidth() * ROW);
        int seen = Math.max(1, getHeight() / row - 1);
        int live = 0;
        for (int i = 0; i < near.size(); i++) {
            live = near.get(i).live() || !near.get(i).pencil() ? i : live;
        }
        int from = Math.max(0, Math.min(live - seen / 2, near.size() - seen));
        for (int i = from; i < Math.min(near.size(), from + seen); i++) {
            row(g, palette, near.get(i), new Rectangle(0, row / 2 + (i - from) * row, width - 1, row));
        }
    }

    private void row(Graphics2D g, Palette palette, FarModel.Near step, Rectangle place) {
        int mark = Math.max(3, place.height / 8);
        if (step.live()) {
            g.setColor(palette.tint());
            g.fillRect(place.x, place.y, place.width, place.height - 1);
            g.setColor(palette.live());
            g.fillRect(place.x, place.y, mark, place.height - 1);
        }
        g.setColor(palette.rule());
        g.fillRect(place.x + mark, place.y + place.height - 1, place.width - 2 * mark, 1);
        int inset = 2 * mark + 2;
        int base = place.y + place.height * 2 / 3;
        Color ink = step.pencil() ? palette.pencil() : palette.ink();
        int right = place.width - inset;
        g.setFont(font(step.live() ? Type.TEXT_STRONG : step.pencil() ? Type.PENCIL_TEXT : Type.TEXT));
        FontMetrics metrics = g.getFontMetrics();
        g.setColor(ink);
        int each = metrics.stringWidth("\u2212000.00 ");
        int left = right;
        for (int i = step.values().size() - 1; i >= 0; i--) {
            String value = step.values().get(i);
            g.drawString(value, left - metrics.stringWidth(value), base);
            left -= Math.max(each, metrics.stringWidth(value));
        }
        String name = shortened(step.step(), metrics, left - inset);
        if (metrics.stringWidth(name) <= left - inset || step.values().stream().allMatch(String::isEmpty)) {
            g.setColor(step.pencil() ? palette.muted() : palette.ink());
            g.drawString(name, inset, base);
        }
    }

    /** A name of two parts by its first part where the whole has no place. */
    private static String shortened(String name, FontMetrics metrics, int room) {
        int comma = name.indexOf(',');
        return comma > 0 && metrics.stringWidth(name) > room ? name.substring(0, comma) : name;
    }

    private Font font(Type like) {
        return like.font().deriveFont((float) (getWidth() * TEXT));
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(800), Look.px(400));
    }

    @Override
    public javax.accessibility.AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {};
            accessibleContext.setAccessibleName(Words.of("far.name"));
        }
        return accessibleContext;
    }
}
