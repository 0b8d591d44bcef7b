package railwitness.logger.reporting.certificate;

import java.util.Optional;
import railwitness.logger.recording.store.Verification;

/** Whether a session and the certificate of it still belong together. */
public enum Belonging {
    /** The printed digest is that of the session, and the session is as it was recorded. */
    TOGETHER("session and certificate belong together"),
    /** The digest is that of the session, but the session was altered under it. */
    SESSION_ALTERED("the certificate is of this session, but the session was altered since it was recorded"),
    /** The session holds together, with another digest: another session, or a chain rebuilt after altering. */
    ANOTHER_DIGEST(
            "the certificate is not of this session as it stands: it is of another session, or this one was altered"
                    + " and its chain made anew"),
    /** Neither. */
    ALTERED_AND_ANOTHER("the session was altered, and the certificate carries another digest"),
    /** What is printed in the certificate and what it says of itself to machines differ. */
    CERTIFICATE_ALTERED("the certificate was altered: the digest printed in it and the one in its document information"
            + " differ");

    private final String words;

    Belonging(String words) {
        this.words = words;
    }

    /** One sentence, without a full stop. */
    public String words() {
        return words;
    }

    /** Holds a certificate against a session that was worked out again. */
    public static Belonging of(Verification session, PrintedDigest certificate) {
        if (certificate.contradictsItself()) {
            return CERTIFICATE_ALTERED;
        }
        Optional<String> digest = certificate.printed().or(certificate::informed);
        return of(session, digest.orElse(""));
    }

    /** @param digest as printed on the paper, 64 hexadecimal digits */
    public static Belonging of(Verification session, String digest) {
        if (digest.equals(session.seal())) {
            return session.isIntact() ? TOGETHER : SESSION_ALTERED;
        }
        return session.isIntact() ? ANOTHER_DIGEST : ALTERED_AND_ANOTHER;
    }
}
