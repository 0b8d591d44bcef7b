package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.store.Verification;

/** Sessions altered under their certificates, as a forger with an SQLite tool would. */
class BelongingTest {
    @TempDir
    static Path folder;

    private static Path session;
    private static Path pdf;

    @BeforeAll
    static void certify() {
        session = Rehearsed.session(folder.resolve("a.session"), "", 1, Rehearsed.head("2026-050", true));
        pdf = folder.resolve("a.pdf");
        Certificate.of(session, Order.plain(Instant.parse("2026-03-29T08:00:00Z")))
                .writeTo(pdf);
    }

    private static Belonging of(Path file) {
        return Belonging.of(Verification.of(file), PrintedDigest.in(pdf));
    }

    @Test
    void untouchedSessionBelongs() {
        assertThat(of(session)).isEqualTo(Belonging.TOGETHER);
    }

    @Test
    void alteredCellIsFoundWithItsSecond() throws Exception {
        Path forged = copy("forged.session");
        sql(forged, "UPDATE event SET text = 'all was well' WHERE at_ns > 60000000000 AND what LIKE '%load%'");
        assertThat(of(forged)).isEqualTo(Belonging.SESSION_ALTERED);
        assertThat(Verification.of(forged).firstSecond().getAsLong()).isBetween(58L, 70L);
    }

    @Test
    void alteredSessionGetsNoCertificate() throws Exception {
        Path forged = copy("no.session");
        sql(forged, "UPDATE sheet SET text = replace(text, '0.060', '0.600') WHERE kind = 'design'");
        assertThatThrownBy(() -> Certificate.of(forged, Order.plain(Instant.EPOCH)))
                .isInstanceOf(CertificateException.class)
                .hasMessageContaining("no certificate of it: broken chain: the session is not intact");
    }

    /** A chain made anew is in order by itself; only the paper knows better. */
    @Test
    void chainMadeAnewIsFoundByThePrintedDigest() {
        Path anew = Rehearsed.session(folder.resolve("anew.session"), "", 2, Rehearsed.head("2026-050", true));
        assertThat(Verification.of(anew).isIntact()).isTrue();
        assertThat(of(anew)).isEqualTo(Belonging.ANOTHER_DIGEST);
    }

    @Test
    void digestTypedFromPaperIsAsGood() {
        Verification verification = Verification.of(session);
        String typed = PrintedDigest.typed(Digest.grouped(verification.seal()).toUpperCase(java.util.Locale.ROOT));
        assertThat(Belonging.of(verification, typed)).isEqualTo(Belonging.TOGETHER);
        assertThatThrownBy(() -> PrintedDigest.typed("7f3a")).hasMessageContaining("must be 64 hexadecimal digits");
    }

    @Test
    void certificateThatContradictsItselfIsFound() {
        PrintedDigest digest = PrintedDigest.in(pdf);
        PrintedDigest altered =
                new PrintedDigest(digest.printed().map(text -> "0".repeat(64)), digest.informed(), digest.sessionId());
        assertThat(Belonging.of(Verification.of(session), altered)).isEqualTo(Belonging.CERTIFICATE_ALTERED);
    }

    @Test
    void fileWithoutDigestIsNoCertificate() throws Exception {
        Path note = Files.writeString(folder.resolve("note.pdf"), "%PDF-1.4 not really");
        assertThatThrownBy(() -> PrintedDigest.in(note)).hasMessageContaining("carries no digest of a session");
        assertThatThrownBy(() -> PrintedDigest.in(folder.resolve("none.pdf"))).hasMessageContaining("cannot be read");
        assertThat(PrintedDigest.inAny(note)).isEqualTo(Optional.empty());
    }

    private static Path copy(String name) throws Exception {
        return Files.copy(session, folder.resolve(name), StandardCopyOption.REPLACE_EXISTING);
    }

    private static void sql(Path file, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            assertThat(statement.executeUpdate(sql)).isPositive();
        }
    }
}
