package railwitness.logger.reporting.certificate;

import java.nio.file.Path;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * The test that this one follows.
 *
 * @param words its number, condition and verdict
 * @param seal digest of its session
 * @param figures what it found
 */
record Earlier(String words, String seal, EarlierFigures figures) {
    /**
     * @throws CertificateException when it is the same session or of another unit
     * @throws railwitness.logger.recording.store.StoreException when it is not as it was recorded
     */
    static Earlier of(Path file, SessionHead now) {
        try (SessionFile opened = SessionFile.open(file)) {
            SessionFindings findings = SessionFindings.judged(opened);
            findings.chain().refuseBroken(file);
            SessionHead before = findings.head();
            if (before.id().equals(now.id())) {
                throw new CertificateException(file + ": is this very session; name the one before it");
            }
            if (!before.unitSerial().equals(now.unitSerial())) {
                throw new CertificateException(file + ": is of the unit with serial '" + before.unitSerial()
                        + "', not '" + now.unitSerial() + "'; name the session of the same unit");
            }
            return new Earlier(words(findings), opened.seal(), EarlierFigures.of(findings.findings()));
        }
    }

    private static String words(SessionFindings session) {
        String condition = session.head().unitCondition();
        return "session " + session.head().id() + (condition.isEmpty() ? "" : ", " + condition) + ", "
                + Headline.of(session).words().toLowerCase(java.util.Locale.ROOT);
    }
}
