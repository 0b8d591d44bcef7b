package railwitness.logger.ui.screen.widgets;

import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.Optional;

/**
 * What stands in one place of a ruled sheet.
 *
 * @param text also what is read aloud for a drawing
 * @param drawing drawn instead of the text
 * @param aside in pencil beside the text; empty for nothing
 */
public record Cell(String text, Ink ink, Optional<Drawing> drawing, String aside) {
    /** Without anything beside it. */
    public Cell(String text, Ink ink, Optional<Drawing> drawing) {
        this(text, ink, drawing, "");
    }

    /** The same with what was expected beside it in pencil, where there is room for it. */
    public Cell beside(String expected) {
        return new Cell(text, ink, drawing, expected);
    }

    /** Something drawn into a place of the sheet. */
    @FunctionalInterface
    public interface Drawing {
        void draw(Graphics2D g, Rectangle place);
    }

    public static final Cell EMPTY = new Cell("", Ink.INK, Optional.empty());

    public static Cell of(String text, Ink ink) {
        return new Cell(text, ink, Optional.empty());
    }

    public static Cell ink(String text) {
        return of(text, Ink.INK);
    }

    /** A drawing, with the words that say the same. */
    public static Cell drawn(String words, Drawing drawing) {
        return new Cell(words, Ink.INK, Optional.of(drawing));
    }
}
