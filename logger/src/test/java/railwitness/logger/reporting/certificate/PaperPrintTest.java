package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.print.PrinterException;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import javax.print.DocFlavor;
import javax.print.StreamPrintServiceFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What comes out of a printer, by the print service of the platform that writes PostScript. */
class PaperPrintTest {
    @TempDir
    Path folder;

    private byte[] certificate() {
        return Certificate.of(BareSession.write(folder.resolve("bare.session")), Order.plain(Instant.EPOCH))
                .pdf();
    }

    @Test
    void everyPageComesOutOfThePrinter() throws Exception {
        StreamPrintServiceFactory[] printers = StreamPrintServiceFactory.lookupStreamPrintServiceFactories(
                DocFlavor.SERVICE_FORMATTED.PAGEABLE, "application/postscript");
        assumeTrue(printers.length > 0, "this platform has no printer that writes PostScript");
        byte[] pdf = certificate();
        ByteArrayOutputStream paper = new ByteArrayOutputStream();
        boolean printed = PaperPrint.of(pdf, "test", job -> {
            job.setPrintService(printers[0].getPrintService(paper));
            return true;
        });
        assertThat(printed).isTrue();
        String postScript = paper.toString(StandardCharsets.ISO_8859_1);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            long pages = postScript
                    .lines()
                    .filter(line -> line.startsWith("%%Page: "))
                    .count();
            assertThat(postScript.substring(0, 4)).isEqualTo("%!PS");
            assertThat(pages).isEqualTo(document.getNumberOfPages());
        }
    }

    @Test
    void whoChoosesNotToPrintsNothing() {
        assertThat(PaperPrint.of(certificate(), "test", job -> false)).isFalse();
    }

    @Test
    void aPrinterThatRefusesIsToldInOneLine() {
        assertThatThrownBy(() -> PaperPrint.of(certificate(), "test", job -> {
                    throw new PrinterException("out of paper");
                }))
                .isInstanceOf(CertificateException.class)
                .hasMessage("it cannot be printed (out of paper); keep it as a file instead");
    }
}
