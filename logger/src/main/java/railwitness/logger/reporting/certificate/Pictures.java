package railwitness.logger.reporting.certificate;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.awt.Font;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.font.PDFont;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.ChartInk;
import railwitness.logger.reporting.chart.ChartPainter;
import railwitness.logger.reporting.chart.Lettering;

/** Sets pictures side by side as vectors; their lettering is text like any other. */
public final class Pictures {
    private static final float BETWEEN = 26;
    private static final float BELOW = 12;

    private final Typesetter type;
    private final ChartInk ink = ChartInk.paper(Lettering.packed());

    public Pictures(Typesetter type) {
        this.type = type;
    }

    /** Two in a row, from here downwards, over as many pages as it takes. */
    public void flow(List<Chart> charts, float height) {
        for (int i = 0; i < charts.size(); i += 2) {
            type.need(height);
            row(charts.subList(i, Math.min(i + 2, charts.size())), height);
            type.down(BELOW);
        }
    }

    /** At most two beside each other. */
    public void row(List<Chart> charts, float height) {
        float width = (type.width() - BETWEEN) / 2;
        for (int i = 0; i < charts.size(); i++) {
            Chart chart = charts.size() == 2 ? charts.get(i).beside(charts.get(1 - i)) : charts.get(i);
            draw(chart, type.left() + i * (width + BETWEEN), width, height);
        }
        type.down(height);
    }

    private void draw(Chart chart, float x, float width, float height) {
        try {
            PdfBoxGraphics2D ground = new PdfBoxGraphics2D(type.document(), width, height);
            ground.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            ground.setFontTextDrawer(new FaceDrawer(type.faces()));
            ChartPainter.draw(chart, ink, ground, new Rectangle2D.Float(0, 0, width, height));
            ground.dispose();
            type.picture(ground.getXFormObject(), chart.title() + ", " + chart.unit(), x, type.y(), height);
        } catch (IOException e) {
            throw new CertificateException("the picture '" + chart.title() + "' cannot be drawn: " + e.getMessage(), e);
        }
    }

    /** Writes the lettering of a picture with the document's own faces. */
    private static final class FaceDrawer extends PdfBoxGraphics2DFontTextDrawer {
        private final Faces faces;

        FaceDrawer(Faces faces) {
            this.faces = faces;
        }

        @Override
        protected boolean hasDynamicFontMapping() {
            return true;
        }

        @Override
        protected PDFont mapFont(Font font, IFontTextDrawerEnv ground) {
            for (Face face : Face.values()) {
                if (face.postscriptName().equals(font.getPSName())) {
                    return faces.font(face);
                }
            }
            return faces.font(Face.REGULAR);
        }
    }
}
