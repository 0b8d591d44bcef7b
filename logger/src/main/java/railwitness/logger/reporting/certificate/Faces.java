package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import railwitness.logger.text.VisibleText;

/**
 * The packed fonts in one document, embedded as far as they are used, and the widths of text in them. What the face asked
 * for has no sign for is taken from fonts that have many scripts, upright and of one weight.
 */
public final class Faces {
    private static final int FIRST_OF_OTHER_SCRIPTS = 0x250;

    /** Half a page. */
    private static final int LONGEST_TEXT = 4_000;

    private final Map<Face, PackedFont> own = new EnumMap<>(Face.class);
    private final List<PackedFont> others;
    private final Set<String> lacking = new LinkedHashSet<>();
    private final HarmlessText harmless = new HarmlessText(this::isShown);

    /** A stretch of text in one font. */
    record Run(PDFont font, String text) {}

    private Faces(PDDocument document) {
        for (Face face : Face.values()) {
            own.put(face, PackedFont.roboto(document, face.postscriptName()));
        }
        others = List.of(PackedFont.manyAlphabets(document), PackedFont.eastAsian(document));
    }

    public static Faces in(PDDocument document) {
        return new Faces(document);
    }

    /** The face itself, for what is certain to be in it. */
    PDFont font(Face face) {
        return own.get(face).font();
    }

    /**
     * The text with everything that has no glyph, or no visible one, written as its code; Arabic letters joined; of a
     * text that no page has room for, the beginning.
     */
    public String clean(String text) {
        return ArabicForms.of(harmless.of(VisibleText.shortened(text, LONGEST_TEXT)));
    }

    private boolean isShown(int codePoint) {
        boolean shown = own.get(Face.REGULAR).has(codePoint)
                || others.stream().anyMatch(font -> font.has(codePoint))
                || ArabicForms.isJoined(codePoint) && others.get(0).has(ArabicForms.isolated(codePoint));
        if (!shown) {
            lacking.add(new String(Character.toChars(codePoint)));
        }
        return shown;
    }

    /** Signs asked for so far that none of the fonts has. */
    Set<String> lacking() {
        return Set.copyOf(lacking);
    }

    /** Clean text in stretches of one font each, in their order. */
    List<Run> runs(String text, Face face) {
        PackedFont first = own.get(face);
        if (text.codePoints().allMatch(codePoint -> codePoint < FIRST_OF_OTHER_SCRIPTS && first.has(codePoint))) {
            return List.of(new Run(first.font(), text));
        }
        List<Run> runs = new ArrayList<>();
        PackedFont now = first;
        StringBuilder same = new StringBuilder();
        for (int codePoint : text.codePoints().toArray()) {
            PackedFont next = of(codePoint, first, now);
            if (next != now && !same.isEmpty()) {
                runs.add(new Run(now.font(), same.toString()));
                same.setLength(0);
            }
            now = next;
            same.appendCodePoint(codePoint);
        }
        if (!same.isEmpty()) {
            runs.add(new Run(now.font(), same.toString()));
        }
        return runs;
    }

    /** A mark stays in the font of its letter where that has it. */
    private PackedFont of(int codePoint, PackedFont first, PackedFont now) {
        boolean mark = Character.getType(codePoint) == Character.NON_SPACING_MARK;
        if (mark && now.has(codePoint)) {
            return now;
        }
        if (first.has(codePoint)) {
            return first;
        }
        return others.stream().filter(font -> font.has(codePoint)).findFirst().orElse(first);
    }

    /** Width of clean text, pt. */
    public float width(String text, Face face, float size) {
        try {
            float width = 0;
            for (Run run : runs(text, face)) {
                width += run.font().getStringWidth(run.text());
            }
            return width / 1000 * size;
        } catch (IOException e) {
            throw new CertificateException("text cannot be set in the font " + face.postscriptName(), e);
        }
    }

    /** Clean text, ending in an ellipsis where it is wider than there is room. */
    public String clipped(String text, Face face, float size, float room) {
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
