package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import railwitness.logger.text.VisibleText;

/** The packed fonts in one document, embedded as far as they are used, and the widths of text in them. */
final class Faces {
    private static final String FOLDER = "/com/formdev/flatlaf/fonts/roboto/";

    /** Half a page. */
    private static final int LONGEST_TEXT = 4_000;

    private final Map<Face, PDType0Font> fonts = new EnumMap<>(Face.class);
    private final HarmlessText harmless;

    private Faces(PDDocument document) throws IOException {
        CmapLookup glyphs = null;
        for (Face face : Face.values()) {
            TrueTypeFont type = read(face.postscriptName() + ".ttf");
            type.disableGsubFeature("liga");
            glyphs = glyphs == null ? type.getUnicodeCmapLookup() : glyphs;
            fonts.put(face, PDType0Font.load(document, type, true));
        }
        CmapLookup known = glyphs;
        harmless = new HarmlessText(codePoint -> known.getGlyphId(codePoint) > 0);
    }

    static Faces in(PDDocument document) throws IOException {
        return new Faces(document);
    }

    private static TrueTypeFont read(String name) throws IOException {
        try (InputStream in = Faces.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new CertificateException("the font " + name + " is not in the program; install it anew");
            }
            return new TTFParser().parse(new RandomAccessReadBuffer(in));
        }
    }

    PDFont font(Face face) {
        return fonts.get(face);
    }

    /**
     * The text with everything that has no glyph, or no visible one, written as its code; of a text that no page has room
     * for, the beginning.
     */
    String clean(String text) {
        return harmless.of(VisibleText.shortened(text, LONGEST_TEXT));
    }

    /** Width of clean text, pt. */
    float width(String text, Face face, float size) {
        try {
            return font(face).getStringWidth(text) / 1000 * size;
        } catch (IOException e) {
            throw new CertificateException("text cannot be set in the font " + face.postscriptName(), e);
        }
    }

    /** Clean text, ending in an ellipsis where it is wider than there is room. */
    String clipped(String text, Face face, float size, float room) {
        if (width(text, face, size) <= room) {
            return text;
        }
        int fits = 0;
        float used = width("\u2026", face, size);
        while (fits < text.length()) {
            int next = fits + Character.charCount(text.codePointAt(fits));
            used += width(text.substring(fits, next), face, size);
            if (used > room) {
                break;
            }
            fits = next;
        }
        return text.substring(0, fits).stripTrailing() + "\u2026";
    }
}
