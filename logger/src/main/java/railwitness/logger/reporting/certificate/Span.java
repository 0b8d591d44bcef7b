package railwitness.logger.reporting.certificate;

import java.awt.Color;

/** A stretch of a paragraph in one face and colour. */
public record Span(String text, Face face, Color colour) {
    public static Span plain(String text) {
        return new Span(text, Face.REGULAR, Tone.INK);
    }

    public static Span strong(String text) {
        return new Span(text, Face.MEDIUM, Tone.INK);
    }

    public static Span muted(String text) {
        return new Span(text, Face.REGULAR, Tone.MUTED);
    }
}
