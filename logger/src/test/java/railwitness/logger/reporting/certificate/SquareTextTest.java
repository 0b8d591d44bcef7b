package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Random;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.store.SessionFile;

/** The square on the paper, read back from pictures of it as a telephone takes them. */
class SquareTextTest {
    private static final long SEED = 77;

    @TempDir
    static Path folder;

    private static BufferedImage page;
    private static String seal;

    @BeforeAll
    static void print() throws Exception {
        Path session = BareSession.write(folder.resolve("small.session"));
        byte[] pdf = Certificate.of(session, Order.plain(Instant.parse("2026-03-29T08:00:00Z")))
                .pdf();
        try (PDDocument document = Loader.loadPDF(pdf);
                SessionFile file = SessionFile.open(session)) {
            page = new PDFRenderer(document).renderImageWithDPI(0, 130);
            seal = file.seal();
        }
    }

    @Test
    void aScanIsRead() throws Exception {
        Path scan = folder.resolve("scan.png");
        ImageIO.write(page, "png", scan.toFile());
        assertThat(SquareText.isPicture(scan)).isTrue();
        assertThat(SquareText.in(scan).digest()).isEqualTo(seal);
        assertThat(SquareText.in(scan).number()).startsWith("2026-060-").endsWith(", issue 1");
    }

    @Test
    void aSlantedNoisyPhotographIsRead() throws Exception {
        BufferedImage photograph =
                new BufferedImage(page.getWidth() + 300, page.getHeight() + 300, BufferedImage.TYPE_INT_RGB);
        Graphics2D ground = photograph.createGraphics();
        ground.setColor(new Color(120, 110, 100));
        ground.fillRect(0, 0, photograph.getWidth(), photograph.getHeight());
        ground.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        ground.rotate(Math.toRadians(7), page.getWidth() / 2.0, page.getHeight() / 2.0);
        ground.drawImage(page, 120, 100, null);
        ground.dispose();
        Random random = new Random(SEED);
        for (int y = 0; y < photograph.getHeight(); y++) {
            for (int x = 0; x < photograph.getWidth(); x++) {
                int grey = new Color(photograph.getRGB(x, y)).getRed() * 3 / 4 + random.nextInt(40);
                photograph.setRGB(x, y, new Color(grey, grey, grey).getRGB());
            }
        }
        Path file = folder.resolve("photograph.jpg");
        ImageIO.write(photograph, "jpg", file.toFile());
        assertThat(SquareText.in(file).digest()).as("seed %d", SEED).isEqualTo(seal);
    }

    @Test
    void aPictureOfSomethingElseIsRefusedInOneLine() throws Exception {
        Path other = folder.resolve("other.png");
        ImageIO.write(new BufferedImage(80, 80, BufferedImage.TYPE_INT_RGB), "png", other.toFile());
        assertThatThrownBy(() -> SquareText.in(other))
                .isInstanceOf(CertificateException.class)
                .hasMessageContaining("photograph it nearer");
    }
}
