package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * What a certificate says of the session it belongs to.
 *
 * @param printed digest on the first page, 64 hexadecimal digits
 * @param informed the same in the document's information
 * @param sessionId in the document's information
 */
public record PrintedDigest(Optional<String> printed, Optional<String> informed, Optional<String> sessionId) {
    /** Ours have some hundred kilobytes. */
    private static final long MOST_BYTES = 30_000_000;

    /**
     * Reads a certificate.
     *
     * @throws CertificateException when it is no PDF or carries no digest
     */
    public static PrintedDigest in(Path pdf) {
        if (!Files.isReadable(pdf)) {
            throw new CertificateException(pdf + ": cannot be read; is the name right, and may you read it?");
        }
        if (!Files.isRegularFile(pdf)) {
            throw new CertificateException(pdf + ": is a folder, a pipe or a device; name a file");
        }
        if (pdf.toFile().length() > MOST_BYTES) {
            throw new CertificateException(pdf + ": is larger than " + MOST_BYTES / 1_000_000
                    + " MB, and no certificate is; name another file");
        }
        return inAny(pdf)
                .orElseThrow(() -> new CertificateException(pdf
                        + ": carries no digest of a session: it is no certificate of this program, or only a picture of"
                        + " one"));
    }

    /** A digest typed in from paper: 64 hexadecimal digits, spaces between them or not. */
    public static String typed(String digits) {
        String bare = digits.replaceAll("\\s", "").toLowerCase(Locale.ROOT);
        if (!bare.matches("[0-9a-f]{" + Digest.DIGITS + "}")) {
            throw new CertificateException("digest '" + digits + "' must be " + Digest.DIGITS
                    + " hexadecimal digits, as printed at the foot of the certificate");
        }
        return bare;
    }

    /** Whether the digest in print is another than the one for machines. */
    boolean contradictsItself() {
        return printed.isPresent() && informed.isPresent() && !printed.equals(informed);
    }

    /** Empty where the file is anything else. */
    static Optional<PrintedDigest> inAny(Path file) {
        if (!Files.isRegularFile(file) || file.toFile().length() > MOST_BYTES) {
            return Optional.empty();
        }
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            PDFTextStripper text = new PDFTextStripper();
            text.setEndPage(1);
            PDDocumentInformation information = document.getDocumentInformation();
            PrintedDigest digest = new PrintedDigest(
                    Digest.printedIn(text.getText(document)),
                    Optional.ofNullable(information.getCustomMetadataValue(Certificate.DIGEST_KEY)),
                    Optional.ofNullable(information.getCustomMetadataValue(Certificate.SESSION_KEY)));
            return digest.printed.isPresent() || digest.informed.isPresent() ? Optional.of(digest) : Optional.empty();
        } catch (IOException | RuntimeException e) {
            return Optional.empty();
        }
    }
}
