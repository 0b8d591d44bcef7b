package railwitness.logger.reporting.certificate;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * How a certificate was made, kept in its document information so that its pages can be set again and compared. What
 * stands here is not in the session, so nobody can hold it against one.
 *
 * @param program version that made it
 * @param order what was wanted; without the earlier session's file
 * @param earlier what was cited of an earlier session
 * @param fileName name of the session's file then
 * @param verified whether the chain was worked out for it
 */
record Making(String program, Order order, Optional<Earlier> earlier, String fileName, boolean verified) {
    private static final String PROGRAM = "MadeBy";
    private static final String FILE = "SessionFile";
    private static final String CAUSES = "WithCauses";
    private static final String VERIFIED = "ChainWorkedOut";
    private static final String WORKSHOP = "Workshop";
    private static final String CUSTOMER = "Customer";
    private static final String EARLIER = "EarlierTest";
    private static final String EARLIER_DIGEST = "EarlierDigest";

    /** The version that runs. */
    static String thisProgram() {
        String version = Making.class.getPackage().getImplementationVersion();
        return version == null ? "unreleased" : version;
    }

    static void keep(Evidence evidence, PDDocumentInformation information) {
        information.setCustomMetadataValue(PROGRAM, thisProgram());
        information.setCustomMetadataValue(FILE, coded(evidence.fileName()));
        information.setCustomMetadataValue(
                CAUSES, String.valueOf(evidence.order().causes()));
        information.setCustomMetadataValue(VERIFIED, String.valueOf(evidence.verified()));
        evidence.order().workshop().ifPresent(text -> information.setCustomMetadataValue(WORKSHOP, coded(text)));
        evidence.order().customer().ifPresent(text -> information.setCustomMetadataValue(CUSTOMER, coded(text)));
        evidence.earlier().ifPresent(earlier -> {
            information.setCustomMetadataValue(EARLIER, coded(earlier.words()));
            information.setCustomMetadataValue(EARLIER_DIGEST, earlier.seal());
        });
    }

    /** Empty for a certificate that does not say. */
    static Optional<Making> of(PDDocument document) {
        PDDocumentInformation information = document.getDocumentInformation();
        String program = information.getCustomMetadataValue(PROGRAM);
        String file = information.getCustomMetadataValue(FILE);
        if (program == null || file == null || information.getCreationDate() == null) {
            return Optional.empty();
        }
        return Optional.of(new Making(
                program,
                new Order(
                        paper(document),
                        Boolean.parseBoolean(information.getCustomMetadataValue(CAUSES)),
                        Optional.empty(),
                        text(information, WORKSHOP),
                        text(information, CUSTOMER),
                        Instant.ofEpochMilli(information.getCreationDate().getTimeInMillis())),
                text(information, EARLIER)
                        .map(words -> new Earlier(
                                words,
                                Optional.ofNullable(information.getCustomMetadataValue(EARLIER_DIGEST))
                                        .orElse(""))),
                decoded(file),
                Boolean.parseBoolean(information.getCustomMetadataValue(VERIFIED))));
    }

    /** For a certificate that does not say how it was made: as plain ones are. */
    static Making plain(PDDocument document, String fileName) {
        return new Making(
                "another version",
                new Order(paper(document), false, Optional.empty(), Optional.empty(), Optional.empty(), Instant.EPOCH),
                Optional.empty(),
                fileName,
                true);
    }

    private static Paper paper(PDDocument document) {
        if (document.getNumberOfPages() == 0) {
            return Paper.A4;
        }
        PDRectangle sheet = document.getPage(0).getMediaBox();
        return sheet.getHeight() < 820 ? Paper.LETTER : Paper.A4;
    }

    /** In plain letters, so that nothing in it acts in a reader of PDF files, and exactly the same when read again. */
    private static String coded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private static String decoded(String text) {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }

    private static Optional<String> text(PDDocumentInformation information, String key) {
        return Optional.ofNullable(information.getCustomMetadataValue(key)).map(Making::decoded);
    }

    boolean byThisProgram() {
        return program.equals(thisProgram());
    }
}
