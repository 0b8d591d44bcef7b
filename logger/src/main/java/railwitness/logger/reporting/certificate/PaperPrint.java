package railwitness.logger.reporting.certificate;

import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.printing.PDFPageable;

/** Sends set pages to a printer, each at its own size. */
public final class PaperPrint {
    /** Whoever chooses the printer; false where none is wanted after all. */
    @FunctionalInterface
    public interface Choice {
        boolean of(PrinterJob job) throws PrinterException;
    }

    private PaperPrint() {}

    /**
     * Prints all pages; not for the event thread, but for a choice that shows a dialog of the system.
     *
     * @param pdf as it would be kept
     * @param name of the job
     * @return false when the person chose not to
     * @throws CertificateException when there is no printer, or it refuses
     */
    public static boolean of(byte[] pdf, String name, Choice choice) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PrinterJob job = PrinterJob.getPrinterJob();
            job.setJobName(name);
            job.setPageable(new PDFPageable(document));
            if (!choice.of(job)) {
                return false;
            }
            job.print();
            return true;
        } catch (PrinterException | IOException e) {
            throw new CertificateException(
                    "it cannot be printed (" + e.getMessage() + "); keep it as a file instead", e);
        }
    }
}
