package railwitness.logger.ui.screen.findings;

import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.image.BufferedImage;
import java.util.List;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Words;

/** The pages of a certificate one below the other, as wide as their place. The arrow and page keys scroll them. */
final class CertificatePages extends Readable {
    private static final int BETWEEN = 16;
    private static final int LEAST_WIDTH = 300;

    private transient List<BufferedImage> pages = List.of();

    CertificatePages() {
        super(new BorderLayout());
        setName("certificate pages");
        setFocusable(true);
        addFocusListener(new FocusListener() {
            @Override
            public void focusGained(FocusEvent e) {
                repaint();
            }

            @Override
            public void focusLost(FocusEvent e) {
                repaint();
            }
        });
    }

    void show(List<BufferedImage> wanted) {
        boolean anew = pages.isEmpty();
        pages = wanted;
        getAccessibleContext().setAccessibleName(Words.of("certificate.pages", wanted.size()));
        revalidate();
        repaint();
        if (anew) {
            scrollRectToVisible(new Rectangle(0, 0, 1, 1));
        }
    }

    /** How many there are. */
    int count() {
        return pages.size();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        Palette palette = Look.palette();
        Rectangle seen = g.getClipBounds();
        int y = 0;
        for (BufferedImage page : pages) {
            Rectangle place = new Rectangle(0, y, getWidth() - 1, height(page) - 1);
            if (place.intersects(seen)) {
                g.drawImage(page, place.x, place.y, place.width, place.height, null);
                g.setColor(isFocusOwner() ? palette.ink() : palette.strongRule());
                g.setStroke(new BasicStroke(isFocusOwner() ? Look.px(2) : 1));
                g.draw(place);
            }
            y += height(page) + Look.px(BETWEEN);
        }
        g.dispose();
    }

    private int height(BufferedImage page) {
        return (int) ((long) page.getHeight() * Math.max(1, getWidth()) / page.getWidth());
    }

    @Override
    public Dimension getPreferredSize() {
        int height =
                pages.stream().mapToInt(page -> height(page) + Look.px(BETWEEN)).sum();
        return new Dimension(Look.px(LEAST_WIDTH), height);
    }
}
