package railwitness.logger.ui.screen.theme;

import com.formdev.flatlaf.fonts.roboto.FlatRobotoFont;
import com.formdev.flatlaf.util.UIScale;
import java.awt.Font;

/** Sizes and weights of type; two weights, digits of equal width. Sizes in pixels at 100 %. */
public enum Type {
    BAND(26, true, false),
    BAND_FIGURE(26, false, false),
    PROMPT(26, false, false),
    OFF_BUTTON(22, true, false),
    STEP(20, false, false),
    TITLE(19, true, false),
    TABLE(15, false, false),
    TABLE_LIVE(15, true, false),
    PENCIL(15, false, true),
    TEXT(14, false, false),
    PENCIL_TEXT(14, false, true),
    TEXT_STRONG(14, true, false),
    HEADING(15, true, false),
    CAPTION(13, false, false),
    CAPTION_STRONG(13, true, false),
    AXIS(11.5f, false, false);

    private final float size;
    private final boolean strong;
    private final boolean slanted;
    private volatile Font made;

    Type(float size, boolean strong, boolean slanted) {
        this.size = size;
        this.strong = strong;
        this.slanted = slanted;
    }

    /** The font at the scale of the screen; the look must be installed before. */
    public Font font() {
        Font known = made;
        float wanted = UIScale.scale(size);
        if (known == null || known.getSize2D() != wanted) {
            String family = strong ? FlatRobotoFont.FAMILY_SEMIBOLD : FlatRobotoFont.FAMILY;
            known = new Font(family, slanted ? Font.ITALIC : Font.PLAIN, 1).deriveFont(wanted);
            made = known;
        }
        return known;
    }
}
