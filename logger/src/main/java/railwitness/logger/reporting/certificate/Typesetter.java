package railwitness.logger.reporting.certificate;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;

/**
 * Pages being set, with a place to go on at: {@link #y()} is the distance from the upper edge, growing downwards, pt.
 * Every text is made harmless on its way to the paper.
 */
final class Typesetter {
    static final float MARGIN = 51;
    private static final float TOP = 46;
    private static final float FOOT = 66;

    private final PDDocument document;
    private final Paper paper;
    private final Faces faces;
    private final PageFurniture furniture;
    private final List<PDPageContentStream> pages = new ArrayList<>();
    private PDPageContentStream page;
    private float y;

    Typesetter(PDDocument document, Paper paper, Faces faces, PageFurniture furniture) {
        this.document = document;
        this.paper = paper;
        this.faces = faces;
        this.furniture = furniture;
    }

    PDDocument document() {
        return document;
    }

    Faces faces() {
        return faces;
    }

    Paper paper() {
        return paper;
    }

    float left() {
        return MARGIN;
    }

    float right() {
        return paper.width() - MARGIN;
    }

    float width() {
        return right() - left();
    }

    float y() {
        return y;
    }

    void down(float points) {
        y += points;
    }

    void moveTo(float points) {
        y = points;
    }

    /** Lowest place that text may reach. */
    float bottom() {
        return paper.height() - FOOT;
    }

    float room() {
        return bottom() - y;
    }

    /** Goes on to a new page unless so much room is left. */
    void need(float points) {
        if (room() < points) {
            newPage();
        }
    }

    void newPage() {
        try {
            PDPage sheet = new PDPage(new PDRectangle(paper.width(), paper.height()));
            document.addPage(sheet);
            page = new PDPageContentStream(document, sheet);
            pages.add(page);
        } catch (IOException e) {
            throw new CertificateException("a page cannot be made: " + e.getMessage(), e);
        }
        y = TOP;
        furniture.head(this, pages.size());
    }

    /** Writes the feet, now that it is known how many pages there are, and ends the pages. */
    void finish() throws IOException {
        for (int i = 0; i < pages.size(); i++) {
            page = pages.get(i);
            furniture.foot(this, i + 1, pages.size());
            page.close();
        }
    }

    void text(String text, Face face, float size, Color colour, float x, float baseline) {
        String clean = faces.clean(text);
        if (clean.isEmpty()) {
            return;
        }
        draw(() -> {
            page.beginText();
            page.setFont(faces.font(face), size);
            page.setNonStrokingColor(colour);
            page.newLineAtOffset(x, paper.height() - baseline);
            page.showText(clean);
            page.endText();
        });
    }

    void textRight(String text, Face face, float size, Color colour, float x, float baseline) {
        text(text, face, size, colour, x - faces.width(faces.clean(text), face, size), baseline);
    }

    /** Big words from corner to corner. */
    void across(String text, Color colour) {
        double angle = Math.atan2(paper.height(), paper.width());
        float size = (float) (0.72 * Math.hypot(paper.width(), paper.height()) / faces.width(text, Face.MEDIUM, 1));
        float half = faces.width(text, Face.MEDIUM, size) / 2;
        draw(() -> {
            page.beginText();
            page.setFont(faces.font(Face.MEDIUM), size);
            page.setNonStrokingColor(colour);
            Matrix place = Matrix.getRotateInstance(angle, paper.width() / 2, paper.height() / 2);
            place.concatenate(Matrix.getTranslateInstance(-half, -size * 0.36f));
            page.setTextMatrix(place);
            page.showText(text);
            page.endText();
        });
    }

    void rule(float from, float to, float at, float thickness, Color colour) {
        draw(() -> {
            page.setStrokingColor(colour);
            page.setLineWidth(thickness);
            page.moveTo(from, paper.height() - at);
            page.lineTo(to, paper.height() - at);
            page.stroke();
        });
    }

    /** Sets a drawn picture with its upper left corner here. */
    void picture(PDFormXObject picture, float x, float top, float height) {
        draw(() -> {
            page.saveGraphicsState();
            page.transform(Matrix.getTranslateInstance(x, paper.height() - top - height));
            page.drawForm(picture);
            page.restoreGraphicsState();
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
