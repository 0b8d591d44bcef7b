package railwitness.logger.reporting.certificate;

import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import railwitness.logger.text.VisibleText;

/**
 * The number of a certificate: the session's, and behind it a mark of everything that makes this paper what it is, so that
 * another customer, another build of the program or another issue is another number.
 */
final class PaperNumber {
    private static final int LONGEST_SESSION = 40;
    private static final int MARK = 6;

    private PaperNumber() {}

    static String of(Evidence evidence) {
        String id = evidence.session().head().id();
        String made = String.join(
                "\u0000",
                id,
                evidence.seal(),
                evidence.sheets().toString(),
                ProgramBuild.text(),
                evidence.order().issued().truncatedTo(ChronoUnit.SECONDS).toString(),
                evidence.order().paper().name(),
                String.valueOf(evidence.order().causes()),
                evidence.earlier().map(Earlier::words).orElse(""),
                evidence.issue().toString(),
                evidence.order().letterhead().map(Letterhead::text).orElse(""),
                evidence.figuresDigest(),
                Arrays.stream(Particular.values())
                        .map(evidence.order().stated()::words)
                        .collect(Collectors.joining("\u0000")));
        return shown(id) + "-" + Digest.of(made).substring(0, MARK).toUpperCase(Locale.ROOT);
    }

    private static String shown(String asItStands) {
        String id = VisibleText.line(asItStands);
        return id.codePointCount(0, id.length()) <= LONGEST_SESSION
                ? id
                : id.substring(0, id.offsetByCodePoints(0, LONGEST_SESSION)) + "\u2026";
    }
}
