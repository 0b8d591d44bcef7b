package railwitness.logger.reporting.certificate;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import railwitness.analysis.verdict.Fitness;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.text.VisibleText;

/**
 * The test certificate of a session as a PDF: one page that sums up, then everything. Fonts are embedded, text stays
 * text, pictures are vectors; nothing comes from a network.
 */
public final class Certificate {
    /** Keys of the document information, for machines. */
    static final String DIGEST_KEY = "SessionDigest";

    static final String SESSION_KEY = "SessionId";

    /** Characters of a name in the document information. */
    private static final int LONGEST_INFORMED = 300;

    private final Evidence evidence;
    private Set<String> lacking = Set.of();

    private Certificate(Evidence evidence) {
        this.evidence = evidence;
    }

    /**
     * Reads a session.
     *
     * @throws CertificateException when no certificate can be made of it: still running, or an order that does not fit
     * @throws railwitness.logger.recording.store.StoreException when it cannot be read
     */
    public static Certificate of(Path session, Order order) {
        return new Certificate(Evidence.of(session, order));
    }

    /**
     * The same certificate on another order; what was read of the session stays as it is.
     *
     * @throws CertificateException when the order does not fit
     */
    public Certificate ordered(Order other) {
        return new Certificate(evidence.ordered(other));
    }

    /** As it was made before. */
    static Certificate again(Path session, Making making) {
        return new Certificate(Evidence.again(session, making));
    }

    public Fitness verdict() {
        return evidence.session().findings().verdict();
    }

    /** How the test ended where that must not be overlooked, else the verdict. */
    public String headline() {
        return evidence.headline().fault()
                        && evidence.session().state() != railwitness.logger.recording.store.SessionState.COMPLETE
                ? evidence.headline().words() + "; " + verdict().words()
                : verdict().words();
    }

    /** Number and issue. */
    public String number() {
        return evidence.number() + ", issue " + evidence.issue().number();
    }

    /** Signs that no packed font has, so that their codes are printed instead; known once the pages were set. */
    public Set<String> lackingSigns() {
        return lacking;
    }

    /** Names of instruments whose calibration was past due when the unit was tested. */
    public List<String> expired() {
        return Calibrations.expired(evidence);
    }

    /** What it was made of. */
    public SessionFindings session() {
        return evidence.session();
    }

    /**
     * Writes the file whole or not at all. A certificate of the same session is replaced, any other file is left alone.
     *
     * @throws CertificateException in one line when it cannot be written
     */
    public void writeTo(Path out) {
        keep(pdf(), out);
    }

    /** Sets all pages; slow. */
    public byte[] pdf() {
        try (PDDocument document = set()) {
            ByteArrayOutputStream whole = new ByteArrayOutputStream();
            document.save(whole);
            return whole.toByteArray();
        } catch (IOException e) {
            throw new CertificateException("the certificate cannot be set (" + e.getMessage() + ")", e);
        }
    }

    /**
     * As {@link #writeTo}, with pages that were set before.
     *
     * @param pdf what {@link #pdf} gave
     */
    public void keep(byte[] pdf, Path out) {
        Path target = out.toAbsolutePath();
        refuseUnlessReplaceable(target);
        Path part = target.resolveSibling("." + target.getFileName() + ".part");
        try {
            Files.write(part, pdf);
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        } catch (AccessDeniedException e) {
            throw new CertificateException(out + ": may not be written there; choose another folder", e);
        } catch (IOException e) {
            throw new CertificateException(out + ": cannot be written (" + e.getMessage() + ")", e);
        } finally {
            deleteQuietly(part);
        }
    }

    private void refuseUnlessReplaceable(Path target) {
        if (target.getParent() == null || !Files.isDirectory(target.getParent())) {
            throw new CertificateException(target.getParent() + ": there is no such folder; make it first");
        }
        if (!Files.exists(target)) {
            return;
        }
        Optional<PrintedDigest> there = PrintedDigest.inAny(target);
        if (there.isEmpty()) {
            throw new CertificateException(target + ": is there already and is no certificate; choose another name");
        }
        String id = evidence.session().head().id();
        if (!there.get().sessionId().equals(Optional.of(forReaders(id)))) {
            throw new CertificateException(target + ": is the certificate of another session ("
                    + forReaders(there.get().sessionId().orElse("unnamed")) + "); choose another name");
        }
    }

    private static void deleteQuietly(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException e) {
            // A left-over with the ending .part harms nobody.
        }
    }

    private PDDocument set() throws IOException {
        PDDocument document = new PDDocument();
        try {
            Typesetter type = new Typesetter(document, evidence.order().paper(), new PageFurniture(evidence));
            new SummaryPage(evidence, type).set();
            type.newPage();
            new ResultPages(evidence, type).set();
            new MethodPages(evidence, type).set();
            new RecordPages(evidence, type).set();
            type.finish();
            lacking = type.faces().lacking();
            inform(document);
            return document;
        } catch (IOException | RuntimeException e) {
            document.close();
            throw e;
        }
    }

    /** As programs that read PDF files may show it: nothing in it acts, and it is no longer than a title. */
    private static String forReaders(String text) {
        return VisibleText.line(VisibleText.shortened(text, LONGEST_INFORMED));
    }

    private void inform(PDDocument document) throws IOException {
        PDDocumentInformation information = document.getDocumentInformation();
        String title = "Test certificate " + forReaders(evidence.number()) + ", issue "
                + evidence.issue().number();
        information.setSubject(
                forReaders(evidence.unit()) + ": " + evidence.headline().words());
        information.setCustomMetadataValue(
                SESSION_KEY, forReaders(evidence.session().head().id()));
        information.setCustomMetadataValue(DIGEST_KEY, evidence.seal());
        Making.keep(evidence, information);
        PaperForKeeping.inform(document, title, evidence.order().issued());
    }
}
