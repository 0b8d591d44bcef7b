package railwitness.logger.ui.screen.window;

import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.List;
import java.util.Map;

/** Paints like another and keeps every text that is drawn, with the place it takes and the place it is seen in. */
public final class TextRecorder extends Graphics2D {
    /** A text as it was drawn, in pixels of the picture. */
    public record Drawn(String text, Rectangle place, Rectangle seen) {
        /** Part of it is seen, and its left or right end is not. */
        public boolean cutSideways() {
            boolean apart = place.y + place.height <= seen.y || place.y >= seen.y + seen.height;
            boolean aside = place.x >= seen.x + seen.width || place.x + place.width <= seen.x;
            return !apart && !aside && (place.x < seen.x - 2 || place.x + place.width > seen.x + seen.width + 2);
        }
    }

    private final Graphics2D g;
    private final List<Drawn> texts;

    /** @param texts filled with every text that is drawn */
    public TextRecorder(Graphics2D g, List<Drawn> texts) {
        this.g = g;
        this.texts = texts;
    }

    /** A blank at the end of a line is nothing that is seen. */
    private void kept(String drawn, double x, double y) {
        String text = drawn.stripTrailing();
        if (text.isEmpty()) {
            return;
        }
        FontMetrics metrics = g.getFontMetrics();
        Rectangle box = new Rectangle(
                (int) Math.round(x),
                (int) Math.round(y) - metrics.getAscent() * 3 / 4,
                metrics.stringWidth(text),
                metrics.getAscent() * 3 / 4);
        Rectangle place = g.getTransform().createTransformedShape(box).getBounds();
        Rectangle clip = g.getClipBounds();
        Rectangle seen = clip == null
                ? new Rectangle(0, 0, 1 << 20, 1 << 20)
                : g.getTransform().createTransformedShape(clip).getBounds();
        texts.add(new Drawn(text, place, seen));
    }

    @Override
    public void drawString(String text, int x, int y) {
        kept(text, x, y);
        g.drawString(text, x, y);
    }

    @Override
    public void drawString(String text, float x, float y) {
        kept(text, x, y);
        g.drawString(text, x, y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, int x, int y) {
        g.drawString(text, x, y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        g.drawString(text, x, y);
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        g.drawGlyphVector(glyphs, x, y);
    }

    @Override
    public Graphics create() {
        return new TextRecorder((Graphics2D) g.create(), texts);
    }

    @Override
    public void draw(Shape s) {
        g.draw(s);
    }

    @Override
    public void fill(Shape s) {
        g.fill(s);
    }

    @Override
    public boolean drawImage(Image a, AffineTransform b, ImageObserver c) {
        return this.g.drawImage(a, b, c);
    }

    @Override
    public void drawImage(BufferedImage a, BufferedImageOp b, int c, int d) {
        g.drawImage(a, b, c, d);
    }

    @Override
    public void drawRenderedImage(RenderedImage a, AffineTransform b) {
        g.drawRenderedImage(a, b);
    }

    @Override
    public void drawRenderableImage(RenderableImage a, AffineTransform b) {
        g.drawRenderableImage(a, b);
    }

    @Override
    public boolean hit(Rectangle a, Shape b, boolean c) {
        return g.hit(a, b, c);
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        return g.getDeviceConfiguration();
    }

    @Override
    public void setComposite(Composite a) {
        g.setComposite(a);
    }

    @Override
    public void setPaint(Paint a) {
        g.setPaint(a);
    }

    @Override
    public void setStroke(Stroke a) {
        g.setStroke(a);
    }

    @Override
    public void setRenderingHint(RenderingHints.Key a, Object b) {
        g.setRenderingHint(a, b);
    }

    @Override
    public Object getRenderingHint(RenderingHints.Key a) {
        return g.getRenderingHint(a);
    }

    @Override
    public void setRenderingHints(Map<?, ?> a) {
        g.setRenderingHints(a);
    }

    @Override
    public void addRenderingHints(Map<?, ?> a) {
        g.addRenderingHints(a);
    }

    @Override
    public RenderingHints getRenderingHints() {
        return g.getRenderingHints();
    }

    @Override
    public void translate(int a, int b) {
        g.translate(a, b);
    }

    @Override
    public void translate(double a, double b) {
        g.translate(a, b);
    }

    @Override
    public void rotate(double a) {
        g.rotate(a);
    }

    @Override
    public void rotate(double a, double b, double c) {
        g.rotate(a, b, c);
    }

    @Override
    public void scale(double a, double b) {
        g.scale(a, b);
    }

    @Override
    public void shear(double a, double b) {
        g.shear(a, b);
    }

    @Override
    public void transform(AffineTransform a) {
        g.transform(a);
    }

    @Override
    public void setTransform(AffineTransform a) {
        g.setTransform(a);
    }

    @Override
    public AffineTransform getTransform() {
        return g.getTransform();
    }

    @Override
    public Paint getPaint() {
        return g.getPaint();
    }

    @Override
    public Composite getComposite() {
        return g.getComposite();
    }

    @Override
    public void setBackground(Color a) {
        g.setBackground(a);
    }

    @Override
    public Color getBackground() {
        return g.getBackground();
    }

    @Override
    public Stroke getStroke() {
        return g.getStroke();
    }

    @Override
    public void clip(Shape a) {
        g.clip(a);
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return g.getFontRenderContext();
    }

    @Override
    public Color getColor() {
        return g.getColor();
    }

    @Override
    public void setColor(Color a) {
        g.setColor(a);
    }

    @Override
    public void setPaintMode() {
        g.setPaintMode();
    }

    @Override
    public void setXORMode(Color a) {
        g.setXORMode(a);
    }

    @Override
    public Font getFont() {
        return g.getFont();
    }

    @Override
    public void setFont(Font a) {
        g.setFont(a);
    }

    @Override
    public FontMetrics getFontMetrics(Font a) {
        return g.getFontMetrics(a);
    }

    @Override
    public Rectangle getClipBounds() {
        return g.getClipBounds();
    }

    @Override
    public void clipRect(int a, int b, int c, int d) {
        g.clipRect(a, b, c, d);
    }

    @Override
    public void setClip(int a, int b, int c, int d) {
        g.setClip(a, b, c, d);
    }

    @Override
    public Shape getClip() {
        return g.getClip();
    }

    @Override
    public void setClip(Shape a) {
        g.setClip(a);
    }

    @Override
    public void copyArea(int a, int b, int c, int d, int e, int f) {
        g.copyArea(a, b, c, d, e, f);
    }

    @Override
    public void drawLine(int a, int b, int c, int d) {
        g.drawLine(a, b, c, d);
    }

    @Override
    public void fillRect(int a, int b, int c, int d) {
        g.fillRect(a, b, c, d);
    }

    @Override
    public void clearRect(int a, int b, int c, int d) {
        g.clearRect(a, b, c, d);
    }

    @Override
    public void drawRoundRect(int a, int b, int c, int d, int e, int f) {
        g.drawRoundRect(a, b, c, d, e, f);
    }

    @Override
    public void fillRoundRect(int a, int b, int c, int d, int e, int f) {
        g.fillRoundRect(a, b, c, d, e, f);
    }

    @Override
    public void drawOval(int a, int b, int c, int d) {
        g.drawOval(a, b, c, d);
    }

    @Override
    public void fillOval(int a, int b, int c, int d) {
        g.fillOval(a, b, c, d);
    }

    @Override
    public void drawArc(int a, int b, int c, int d, int e, int f) {
        g.drawArc(a, b, c, d, e, f);
    }

    @Override
    public void fillArc(int a, int b, int c, int d, int e, int f) {
        g.fillArc(a, b, c, d, e, f);
    }

    @Override
    public void drawPolyline(int[] a, int[] b, int c) {
        g.drawPolyline(a, b, c);
    }

    @Override
    public void drawPolygon(int[] a, int[] b, int c) {
        g.drawPolygon(a, b, c);
    }

    @Override
    public void fillPolygon(int[] a, int[] b, int c) {
        g.fillPolygon(a, b, c);
    }

    @Override
    public boolean drawImage(Image a, int b, int c, ImageObserver d) {
        return this.g.drawImage(a, b, c, d);
    }

    @Override
    public boolean drawImage(Image a, int b, int c, int d, int e, ImageObserver f) {
        return this.g.drawImage(a, b, c, d, e, f);
    }

    @Override
    public boolean drawImage(Image a, int b, int c, Color d, ImageObserver e) {
        return this.g.drawImage(a, b, c, d, e);
    }

    @Override
    public boolean drawImage(Image a, int b, int c, int d, int e, Color f, ImageObserver g) {
        return this.g.drawImage(a, b, c, d, e, f, g);
    }

    @Override
    public boolean drawImage(Image a, int b, int c, int d, int e, int f, int g, int h, int i, ImageObserver j) {
        return this.g.drawImage(a, b, c, d, e, f, g, h, i, j);
    }

    @Override
    public boolean drawImage(
            Image a, int b, int c, int d, int e, int f, int g, int h, int i, Color j, ImageObserver k) {
        return this.g.drawImage(a, b, c, d, e, f, g, h, i, j, k);
    }

    @Override
    public void dispose() {
        g.dispose();
    }
}
