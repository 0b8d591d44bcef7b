package railwitness.logger.ui.screen.findings;

import java.awt.image.BufferedImage;
import java.awt.print.PrinterJob;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import railwitness.logger.reporting.certificate.Certificate;
import railwitness.logger.reporting.certificate.Order;
import railwitness.logger.reporting.certificate.PaperPrint;
import railwitness.logger.ui.screen.stage.Work;

/**
 * A certificate that is not kept yet.
 *
 * @param pdf all of it
 * @param pages as they will be printed
 */
record CertificateDraft(Certificate certificate, byte[] pdf, List<BufferedImage> pages) {
    private static final float POINTS_IN_AN_INCH = 72;
    private static final double READ = 0.35;
    private static final double SET = 0.6;

    CertificateDraft {
        pages = List.copyOf(pages);
    }

    /**
     * Sets the certificate and draws its pages; slow.
     *
     * @param width of a page, pixels
     */
    static CertificateDraft of(Path session, Order order, int width, Work progress) throws IOException {
        Certificate certificate = Certificate.of(session, order);
        progress.at(READ);
        byte[] pdf = certificate.pdf();
        progress.at(SET);
        return new CertificateDraft(certificate, pdf, pages(pdf, width, progress));
    }

    /** Keeps exactly what was seen. */
    void keep(Path out) {
        certificate.keep(pdf, out);
    }

    /** Asks for the printer and prints; false where none was chosen. Not for the event thread. */
    boolean print() {
        return PaperPrint.of(pdf, certificate.number(), PrinterJob::printDialog);
    }

    private static List<BufferedImage> pages(byte[] pdf, int width, Work progress) throws IOException {
        List<BufferedImage> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFRenderer renderer = new PDFRenderer(document);
            int count = document.getNumberOfPages();
            for (int i = 0; i < count; i++) {
                float dpi = width
                        * POINTS_IN_AN_INCH
                        / document.getPage(i).getMediaBox().getWidth();
                pages.add(renderer.renderImageWithDPI(i, dpi, ImageType.RGB));
                progress.at(SET + (1 - SET) * (i + 1) / count);
            }
        }
        return pages;
    }
}
