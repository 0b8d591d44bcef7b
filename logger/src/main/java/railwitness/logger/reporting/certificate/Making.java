package railwitness.logger.reporting.certificate;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
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
 * @param issue which one it was
 * @param fileName name of the session's file then
 * @param verified whether the chain was worked out for it
 */
record Making(String program, Order order, Optional<Earlier> earlier, Issue issue, String fileName, boolean verified) {
    /** Key of the certificate's number. */
    static final String NUMBER = "CertificateNumber";

    /** Key of its headline. */
    static final String VERDICT = "Verdict";

    /** Key of a digest of its figures. */
    static final String FIGURES = "FiguresDigest";

    private static final String PROGRAM = "MadeBy";
    private static final String FILE = "SessionFile";
    private static final String CAUSES = "WithCauses";
    private static final String VERIFIED = "ChainWorkedOut";
    private static final String STATED = "Stated-";
    private static final String EARLIER = "EarlierTest";
    private static final String EARLIER_DIGEST = "EarlierDigest";
    private static final String EARLIER_FIGURES = "EarlierFigures";
    private static final String ISSUE = "Issue";
    private static final String REPLACES = "Replaces";
    private static final String CHANGES = "Changes";
    private static final String LETTERHEAD = "Letterhead";

    /** The version that runs. */
    static String thisProgram() {
        return ProgramBuild.text();
    }

    static void keep(Evidence evidence, PDDocumentInformation information) {
        Order order = evidence.order();
        information.setCustomMetadataValue(PROGRAM, thisProgram());
        information.setCustomMetadataValue(NUMBER, evidence.number());
        information.setCustomMetadataValue(VERDICT, evidence.headline().words());
        information.setCustomMetadataValue(FIGURES, evidence.figuresDigest());
        information.setCustomMetadataValue(FILE, coded(evidence.fileName()));
        information.setCustomMetadataValue(CAUSES, String.valueOf(order.causes()));
        information.setCustomMetadataValue(VERIFIED, String.valueOf(evidence.verified()));
        order.stated()
                .stated()
                .forEach((what, text) -> information.setCustomMetadataValue(STATED + what.key(), coded(text)));
        evidence.earlier().ifPresent(earlier -> {
            information.setCustomMetadataValue(EARLIER, coded(earlier.words()));
            information.setCustomMetadataValue(EARLIER_DIGEST, earlier.seal());
            information.setCustomMetadataValue(
                    EARLIER_FIGURES, coded(earlier.figures().text()));
        });
        information.setCustomMetadataValue(
                ISSUE, String.valueOf(evidence.issue().number()));
        evidence.issue().replaces().ifPresent(words -> {
            information.setCustomMetadataValue(REPLACES, coded(words));
            information.setCustomMetadataValue(
                    CHANGES, coded(String.join("\n", evidence.issue().changes())));
        });
        order.letterhead().ifPresent(head -> information.setCustomMetadataValue(LETTERHEAD, coded(head.text())));
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
                        stated(information),
                        Instant.ofEpochMilli(information.getCreationDate().getTimeInMillis()),
                        false,
                        Optional.empty(),
                        text(information, LETTERHEAD).map(words -> new Letterhead(Logo.in(document), words))),
                text(information, EARLIER)
                        .map(words -> new Earlier(
                                words,
                                Optional.ofNullable(information.getCustomMetadataValue(EARLIER_DIGEST))
                                        .orElse(""),
                                EarlierFigures.of(
                                        text(information, EARLIER_FIGURES).orElse("")))),
                issue(information),
                decoded(file),
                Boolean.parseBoolean(information.getCustomMetadataValue(VERIFIED))));
    }

    private static Particulars stated(PDDocumentInformation information) {
        Map<Particular, String> stated = new EnumMap<>(Particular.class);
        for (Particular what : Particular.values()) {
            text(information, STATED + what.key()).ifPresent(said -> stated.put(what, said));
        }
        return new Particulars(stated);
    }

    private static Issue issue(PDDocumentInformation information) {
        String number = information.getCustomMetadataValue(ISSUE);
        return number == null || !number.matches("[1-9][0-9]{0,5}")
                ? Issue.FIRST
                : new Issue(
                        Integer.parseInt(number),
                        text(information, REPLACES),
                        text(information, CHANGES)
                                .map(lines -> List.of(lines.split("\n")))
                                .orElse(List.of()));
    }

    /** For a certificate that does not say how it was made: as plain ones are. */
    static Making plain(PDDocument document, String fileName) {
        return new Making(
                "another version",
                new Order(paper(document), false, Optional.empty(), Optional.empty(), Optional.empty(), Instant.EPOCH),
                Optional.empty(),
                Issue.FIRST,
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
