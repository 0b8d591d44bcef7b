package railwitness.logger.reporting.certificate;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** The workshop's picture of a certificate that was made before. */
final class Logo {
    private Logo() {}

    /** The one image of pixels on the first page; empty where there is none. */
    static Optional<BufferedImage> in(PDDocument document) {
        try {
            PDResources resources = document.getPage(0).getResources();
            for (COSName name : resources.getXObjectNames()) {
                if (resources.getXObject(name) instanceof PDImageXObject image) {
                    BufferedImage pixels = image.getImage();
                    BufferedImage plain =
                            new BufferedImage(pixels.getWidth(), pixels.getHeight(), BufferedImage.TYPE_INT_RGB);
                    plain.createGraphics().drawImage(pixels, 0, 0, null);
                    return Optional.of(plain);
                }
            }
            return Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
