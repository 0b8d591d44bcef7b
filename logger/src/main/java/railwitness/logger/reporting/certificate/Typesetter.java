package railwitness.logger.reporting.certificate;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.util.Matrix;
import railwitness.logger.reporting.chart.Lettering;

/**
 * Pages being set, with a place to go on at: {@link #y()} is the distance from the upper edge, growing downwards, pt.
 * Every text is made harmless on its way to the paper, and everything is tagged with what it is.
 */
public final class Typesetter {
    static final float MARGIN = 51;
    private static final float TOP = 46;
    private static final float FOOT = 66;

    private final PDDocument document;
    private final Paper paper;
    private final Faces faces;
    private final Furniture furniture;
    private final Tags tags;
    private final List<PDPageContentStream> pages = new ArrayList<>();
    private PDPageContentStream page;
    private float y;

    public Typesetter(PDDocument document, Paper paper, Furniture furniture) {
        this.document = document;
        this.paper = paper;
        this.faces = Faces.in(document);
        this.furniture = furniture;
        this.tags = new Tags(document);
    }

    PDDocument document() {
        return document;
    }

    public Faces faces() {
        return faces;
    }

    Paper paper() {
        return paper;
    }

    public float left() {
        return MARGIN;
    }

    public float right() {
        return paper.width() - MARGIN;
    }

    public float width() {
        return right() - left();
    }

    public float y() {
        return y;
    }

    public void down(float points) {
        y += points;
    }

    public void moveTo(float points) {
        y = points;
    }

    /** Lowest place that text may reach. */
    public float bottom() {
        return paper.height() - FOOT;
    }

    public float room() {
        return bottom() - y;
    }

    /** Goes on to a new page unless so much room is left. */
    public void need(float points) {
        if (room() < points) {
            newPage();
        }
    }

    public void newPage() {
        try {
            PDPage sheet = new PDPage(new PDRectangle(paper.width(), paper.height()));
            document.addPage(sheet);
            page = new PDPageContentStream(document, sheet);
            pages.add(page);
            tags.page(sheet, pages.size() - 1);
        } catch (IOException e) {
            throw new CertificateException("a page cannot be made: " + e.getMessage(), e);
        }
        y = TOP;
        tags.beside(() -> furniture.head(this, pages.size()));
    }

    /** What is set in there is one part of the document, such as Table or TR, for those who have it read out. */
    public void part(String role, Runnable content) {
        tags.part(role, content);
    }

    /** A part to which pieces are added as they come. */
    PDStructureElement open(String role) {
        return tags.open(role);
    }

    /** Goes on in a part that was opened before. */
    void in(PDStructureElement part, Runnable content) {
        tags.in(part, content);
    }

    /** As {@link #part}, and it can be jumped to. */
    public void heading(String role, String words, Runnable content) {
        tags.bookmark(faces.clean(words), document.getPage(pages.size() - 1), paper.height() - y);
        tags.part(role, content);
    }

    /** Writes the feet, now that it is known how many pages there are, and ends the pages. */
    public void finish() throws IOException {
        for (int i = 0; i < pages.size(); i++) {
            page = pages.get(i);
            int number = i + 1;
            tags.page(document.getPage(i), i);
            tags.beside(() -> furniture.foot(this, number, pages.size()));
            page.close();
        }
        tags.finish();
    }

    public void text(String text, Face face, float size, Color colour, float x, float baseline) {
        String clean = faces.clean(text);
        if (clean.isEmpty()) {
            return;
        }
        draw(() -> {
            tags.begin(page, ReadingOrder.turns(clean) ? text : "");
            page.beginText();
            page.setNonStrokingColor(colour);
            page.newLineAtOffset(x, paper.height() - baseline);
            for (Faces.Run run : faces.runs(ReadingOrder.drawn(clean), face)) {
                page.setFont(run.font(), size);
                page.showText(run.text());
            }
            page.endText();
            page.endMarkedContent();
        });
    }

    public void textRight(String text, Face face, float size, Color colour, float x, float baseline) {
        text(text, face, size, colour, x - faces.width(faces.clean(text), face, size), baseline);
    }

    /** Big words from corner to corner, as a drawing: they do not come in between when text is selected. */
    void across(String text, Color colour) {
        Shape words = Lettering.packed()
                .medium()
                .deriveFont(100f)
                .createGlyphVector(new java.awt.font.FontRenderContext(null, true, true), text)
                .getOutline();
        double size = 0.72
                * Math.hypot(paper.width(), paper.height())
                / words.getBounds2D().getWidth();
        AffineTransform place = AffineTransform.getTranslateInstance(paper.width() / 2, paper.height() / 2);
        place.rotate(-Math.atan2(paper.height(), paper.width()));
        place.scale(size, size);
        place.translate(-words.getBounds2D().getCenterX(), -words.getBounds2D().getCenterY());
        fill(place.createTransformedShape(words), colour);
    }

    /** Fills a shape, its coordinates counted from the upper left corner of the page downwards. */
    public void fill(Shape shape, Color colour) {
        draw(() -> {
            tags.artifact(page);
            page.setNonStrokingColor(colour);
            trace(shape);
            page.fill();
            page.endMarkedContent();
        });
    }

    /** Draws the outline of a shape, as {@link #fill}. */
    public void stroke(Shape shape, float thickness, Color colour) {
        draw(() -> {
            tags.artifact(page);
            page.setStrokingColor(colour);
            page.setLineWidth(thickness);
            trace(shape);
            page.stroke();
            page.endMarkedContent();
        });
    }

    private void trace(Shape shape) throws IOException {
        float[] at = new float[6];
        float[] now = new float[2];
        AffineTransform upright = new AffineTransform(1, 0, 0, -1, 0, paper.height());
        for (PathIterator path = shape.getPathIterator(upright); !path.isDone(); path.next()) {
            switch (path.currentSegment(at)) {
                case PathIterator.SEG_MOVETO -> page.moveTo(now[0] = at[0], now[1] = at[1]);
                case PathIterator.SEG_LINETO -> page.lineTo(now[0] = at[0], now[1] = at[1]);
                case PathIterator.SEG_QUADTO -> {
                    page.curveTo(
                            now[0] + (at[0] - now[0]) * 2 / 3,
                            now[1] + (at[1] - now[1]) * 2 / 3,
                            at[2] + (at[0] - at[2]) * 2 / 3,
                            at[3] + (at[1] - at[3]) * 2 / 3,
                            at[2],
                            at[3]);
                    now[0] = at[2];
                    now[1] = at[3];
                }
                case PathIterator.SEG_CUBICTO ->
                    page.curveTo(at[0], at[1], at[2], at[3], now[0] = at[4], now[1] = at[5]);
                default -> page.closePath();
            }
        }
    }

    public void rule(float from, float to, float at, float thickness, Color colour) {
        stroke(new java.awt.geom.Line2D.Float(from, at, to, at), thickness, colour);
    }

    /** Sets a drawn picture with its upper left corner here. */
    void picture(PDFormXObject picture, String words, float x, float top, float height) {
        draw(() -> {
            tags.figure(page, faces.clean(words));
            page.saveGraphicsState();
            page.transform(Matrix.getTranslateInstance(x, paper.height() - top - height));
            page.drawForm(picture);
            page.restoreGraphicsState();
            page.endMarkedContent();
        });
    }

    /** What the shapes drawn in there show together, in words, for those who have it read out. */
    void drawing(String words) {
        draw(() -> {
            tags.figure(page, faces.clean(words));
            page.endMarkedContent();
        });
    }

    /** Sets an image of pixels, its upper left corner here. */
    public void image(BufferedImage image, String words, float x, float top, float width, float height) {
        draw(() -> {
            PDImageXObject object = LosslessFactory.createFromImage(document, image);
            tags.figure(page, words);
            page.drawImage(object, x, paper.height() - top - height, width, height);
            page.endMarkedContent();
        });
    }

    @FunctionalInterface
    private interface Drawing {
        void draw() throws IOException;
    }

    private static void draw(Drawing drawing) {
        try {
            drawing.draw();
        } catch (IOException e) {
            throw new CertificateException("the page cannot be drawn: " + e.getMessage(), e);
        }
    }
}
