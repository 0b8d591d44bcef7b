package railwitness.logger.ui.screen.widgets;

import java.awt.Color;
import java.awt.Font;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;

/** How something is written. */
public enum Ink {
    /** Measured. */
    INK(Type.TABLE),
    /** Being measured. */
    LIVE(Type.TABLE_LIVE),
    /** Predicted. */
    PENCIL(Type.PENCIL),
    /** Beside the matter. */
    MUTED(Type.TABLE),
    /** Wrong. */
    FAULT(Type.TABLE_LIVE);

    private final Type type;

    Ink(Type type) {
        this.type = type;
    }

    public Font font() {
        return type.font();
    }

    public Color colour(Palette palette) {
        return switch (this) {
            case INK, LIVE -> palette.ink();
            case PENCIL -> palette.pencil();
            case MUTED -> palette.muted();
            case FAULT -> palette.fault();
        };
    }
}
