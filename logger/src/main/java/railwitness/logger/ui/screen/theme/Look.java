package railwitness.logger.ui.screen.theme;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import com.formdev.flatlaf.fonts.roboto.FlatRobotoFont;
import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;
import javax.swing.UIManager;
import net.miginfocom.layout.PlatformDefaults;
import net.miginfocom.layout.UnitValue;

/** Installs a theme in the look-and-feel, where every component finds it again when it paints. */
public final class Look {
    private static final String PALETTE = "railwitness.palette";

    private Look() {}

    /**
     * Before the first component is made.
     *
     * @param percent of the usual size, 100 to 200; empty takes what the desktop says
     */
    public static void scale(OptionalInt percent) {
        percent.ifPresent(wanted -> System.setProperty("flatlaf.uiScale", wanted + "%"));
    }

    /** Makes the theme the one in which everything is painted from now on. */
    public static void install(Theme theme) {
        FlatRobotoFont.install();
        FlatRobotoFont.installSemiBold();
        FlatLaf.setPreferredFontFamily(FlatRobotoFont.FAMILY);
        FlatLaf.setPreferredSemiboldFontFamily(FlatRobotoFont.FAMILY_SEMIBOLD);
        FlatLaf.setGlobalExtraDefaults(defaults(theme.palette()));
        if (theme == Theme.LIGHT) {
            FlatLightLaf.setup();
        } else {
            FlatDarkLaf.setup();
        }
        UIManager.put(PALETTE, theme.palette());
        PlatformDefaults.setDefaultHorizontalUnit(UnitValue.LPX);
        PlatformDefaults.setDefaultVerticalUnit(UnitValue.LPY);
        FlatLaf.updateUI();
    }

    /** The colours of the installed theme. */
    public static Palette palette() {
        return UIManager.get(PALETTE) instanceof Palette installed ? installed : Theme.LIGHT.palette();
    }

    /** Pixels of the screen for pixels at 100 %. */
    public static int px(int atHundredPercent) {
        return UIScale.scale(atHundredPercent);
    }

    private static Map<String, String> defaults(Palette p) {
        Map<String, String> all = new HashMap<>();
        all.put("@background", hex(p.paper()));
        all.put("@foreground", hex(p.ink()));
        all.put("@disabledForeground", hex(p.muted()));
        all.put("@componentBackground", hex(p.sheet()));
        all.put("@accentColor", hex(p.input()));
        all.put("@accentBaseColor", hex(p.input()));
        all.put("@accentFocusColor", hex(p.ink()));
        all.put("Component.focusColor", hex(p.ink()));
        all.put("Component.focusedBorderColor", hex(p.ink()));
        all.put("Component.borderColor", hex(p.strongRule()));
        all.put("Component.focusWidth", "0");
        all.put("Component.innerFocusWidth", "1");
        all.put("Button.innerFocusWidth", "1");
        all.put("Component.arc", "6");
        all.put("Button.arc", "6");
        all.put("Button.background", hex(p.sheet()));
        all.put("Button.borderColor", hex(p.strongRule()));
        all.put("Button.default.background", hex(p.ink()));
        all.put("Button.default.foreground", hex(p.paper()));
        all.put("Button.default.hoverBackground", hex(p.input()));
        all.put("Button.default.pressedBackground", hex(p.muted()));
        all.put("Button.default.borderColor", hex(p.ink()));
        all.put("Button.default.boldText", "false");
        all.put("CheckBox.icon.focusWidth", "2");
        all.put("TextComponent.selectAllOnFocusPolicy", "always");
        all.put("ScrollBar.width", "11");
        all.put("ScrollBar.thumb", hex(p.rule()));
        all.put("ScrollBar.hoverThumbColor", hex(p.strongRule()));
        all.put("ScrollBar.pressedThumbColor", hex(p.strongRule()));
        all.put("ScrollBar.track", hex(p.sheet()));
        all.put("ScrollBar.hoverTrackColor", hex(p.sheet()));
        all.put("ScrollBar.thumbArc", "6");
        all.put("ScrollPane.border", "0,0,0,0");
        all.put("TextField.background", hex(p.sheet()));
        all.put("TextArea.background", hex(p.sheet()));
        for (String kind : new String[] {"TextField", "TextArea", "ComboBox"}) {
            all.put(kind + ".selectionBackground", hex(p.strongRule()));
            all.put(kind + ".selectionForeground", hex(p.ink()));
        }
        all.put("TextField.placeholderForeground", hex(p.muted()));
        return all;
    }

    private static String hex(Color colour) {
        return String.format(java.util.Locale.ROOT, "#%06X", colour.getRGB() & 0xFFFFFF);
    }
}
