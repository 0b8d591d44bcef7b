package railwitness.logger.reporting.certificate;

import java.awt.Color;

/** A stretch of a paragraph in one face and colour. */
record Span(String text, Face face, Color colour) {
    static Span plain(String text) {
        return new Span(text, Face.REGULAR, Tone.INK);
    }

    static Span strong(String text) {
        return new Span(text, Face.MEDIUM, Tone.INK);
    }

    static Span muted(String text) {
        return new Span(text, Face.REGULAR, Tone.MUTED);
    }
}
