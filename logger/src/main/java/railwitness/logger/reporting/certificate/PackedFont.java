package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.io.InputStream;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** A font that the program brings along, read and embedded only when a sign of it is needed. */
final class PackedFont {
    private static final String ROBOTO = "/com/formdev/flatlaf/fonts/roboto/";
    private static final String DEJAVU = "/net/sf/jasperreports/fonts/dejavu/DejaVuSans.ttf";
    private static final String DROID = "/railwitness/fonts/DroidSansFallbackFull.ttf";

    private final PDDocument document;
    private final String resource;
    private TrueTypeFont type;
    private CmapLookup glyphs;
    private PDType0Font font;

    private PackedFont(PDDocument document, String resource) {
        this.document = document;
        this.resource = resource;
    }

    /** Latin, Greek and Cyrillic letters. */
    static PackedFont roboto(PDDocument document, String postscriptName) {
        return new PackedFont(document, ROBOTO + postscriptName + ".ttf");
    }

    /** Arabic, Hebrew, Armenian, Georgian letters and many signs. */
    static PackedFont manyAlphabets(PDDocument document) {
        return new PackedFont(document, DEJAVU);
    }

    /** Chinese, Japanese, Korean characters. */
    static PackedFont eastAsian(PDDocument document) {
        return new PackedFont(document, DROID);
    }

    boolean has(int codePoint) {
        read();
        return glyphs.getGlyphId(codePoint) > 0;
    }

    PDFont font() {
        read();
        try {
            if (font == null) {
                font = PDType0Font.load(document, type, true);
            }
            return font;
        } catch (IOException e) {
            throw new CertificateException("the font " + resource + " cannot be embedded: " + e.getMessage(), e);
        }
    }

    private void read() {
        if (type != null) {
            return;
        }
        try (InputStream in = PackedFont.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new CertificateException("the font " + resource + " is not in the program; install it anew");
            }
            type = new TTFParser().parse(new RandomAccessReadBuffer(in));
            type.disableGsubFeature("liga");
            glyphs = type.getUnicodeCmapLookup();
        } catch (IOException e) {
            throw new CertificateException("the font " + resource + " cannot be read: " + e.getMessage(), e);
        }
    }
}
