package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The number is of the paper: whatever differs on it gives another one, and a later issue says what it replaces. */
class IssueTest {
    private static final Order ORDER = Order.plain(Instant.parse("2026-03-29T08:00:00Z"));

    @TempDir
    Path folder;

    @TempDir
    static Path recorded;

    private static Path session;

    @BeforeAll
    static void record() {
        session = BareSession.write(recorded.resolve("a.session"));
    }

    private static Order of(String customer) {
        return ORDER.stating(new Particulars(Map.of(Particular.CUSTOMER, customer)));
    }

    @Test
    void anotherCustomerIsAnotherNumber() {
        String one = Certificate.of(session, of("the Otter")).number();
        assertThat(Certificate.of(session, of("the Otter")).number()).isEqualTo(one);
        assertThat(Certificate.of(session, of("the Heron")).number()).isNotEqualTo(one);
        assertThat(one).startsWith("2026-060-").endsWith(", issue 1");
    }

    @Test
    void aLaterIssueNamesTheOneItReplacesAndWhatChanged() {
        Path out = folder.resolve("a.pdf");
        Certificate first = Certificate.of(session, of("the Otter").after(folder));
        first.writeTo(out);
        Certificate second = Certificate.of(session, of("the Heron").after(folder));
        second.writeTo(out);
        assertThat(second.number()).endsWith(", issue 2");
        String text = PdfText.all(out).replaceAll("\\s+", " ");
        assertThat(text)
                .contains("Replaces No. " + first.number())
                .contains("Customer: 'the Otter' became 'the Heron'")
                .contains("Do not use that one any more");
        assertThat(PageCheck.of(session, out).differences()).isEmpty();
        assertThat(Certificate.of(session, of("the Heron").after(folder)).number())
                .endsWith(", issue 3");
    }

    @Test
    void everythingStatedStandsOnPaperAndTheRestIsNotStated() {
        Path out = folder.resolve("stated.pdf");
        java.util.EnumMap<Particular, String> stated = new java.util.EnumMap<>(Particular.class);
        for (Particular what : Particular.values()) {
            stated.put(what, "<" + what.key() + ">");
        }
        Certificate.of(session, ORDER.stating(new Particulars(stated))).writeTo(out);
        for (Particular what : Particular.values()) {
            assertThat(PdfText.all(out)).contains("<" + what.key() + ">");
        }
        Certificate.of(session, ORDER).writeTo(out);
        assertThat(PdfText.all(out)).contains("Laboratory not stated", "Received not stated", "not stated");
    }

    @Test
    void theWorkshopsOwnHeadIsPrintedAndStillVerified() throws Exception {
        Path head = Files.createDirectory(folder.resolve("head"));
        BufferedImage logo = new BufferedImage(90, 30, BufferedImage.TYPE_INT_ARGB);
        logo.createGraphics().fillRect(0, 0, 40, 30);
        logo.setRGB(2, 2, Color.RED.getRGB());
        ImageIO.write(logo, "png", head.resolve("logo.png").toFile());
        Files.writeString(head.resolve("text.txt"), "Wharf workshop\nLock 7");
        Path out = folder.resolve("head.pdf");
        Certificate.of(session, ORDER.under(Letterhead.in(head))).writeTo(out);
        assertThat(PdfText.pages(out).get(0)).contains("Wharf workshop Lock 7");
        assertThat(PageCheck.of(session, out).differences()).isEmpty();
    }
}
