package railwitness.logger.reporting.chart;

import java.awt.Color;
import java.util.List;
import java.util.Locale;

/**
 * What a picture is drawn with. Sizes are in the units of the ground drawn on: points on paper, pixels on a screen.
 *
 * @param ink titles and lines that are of no rail
 * @param muted axes
 * @param rule grid lines
 * @param fault limits
 * @param rails one after the other; the first again when there are more rails than colours
 * @param axisSize height of the lettering at the axes
 * @param titleSize height of the title
 * @param numbers how the numbers at the axes are written: as everywhere on paper, as the person writes them on a screen
 */
public record ChartInk(
        Lettering lettering,
        Color ink,
        Color muted,
        Color rule,
        Color fault,
        List<Color> rails,
        float axisSize,
        float titleSize,
        Locale numbers) {
    private static final List<Color> RAILS_ON_LIGHT = List.of(
            new Color(0x1F5A8A), new Color(0x8A4B1F), new Color(0x4B6B2E), new Color(0x6A3D7C), new Color(0x3C4650));
    private static final List<Color> RAILS_ON_DARK = List.of(
            new Color(0x8AB9E0), new Color(0xE0A878), new Color(0xA9CC8A), new Color(0xCBA3DB), new Color(0xC5CCD3));

    public ChartInk {
        rails = List.copyOf(rails);
    }

    /** For white paper, in points. */
    public static ChartInk paper(Lettering lettering) {
        return light(lettering, 7.5f, 9);
    }

    /** For a light screen. */
    public static ChartInk light(Lettering lettering, float axisSize, float titleSize) {
        return new ChartInk(
                lettering,
                new Color(0x1D2329),
                new Color(0x59636E),
                new Color(0xDCD8CE),
                new Color(0xB3261E),
                RAILS_ON_LIGHT,
                axisSize,
                titleSize,
                Locale.ROOT);
    }

    /** For a dark screen. */
    public static ChartInk dark(Lettering lettering, float axisSize, float titleSize) {
        return new ChartInk(
                lettering,
                new Color(0xE9ECEF),
                new Color(0xA7B0BA),
                new Color(0x343A40),
                new Color(0xFF8A80),
                RAILS_ON_DARK,
                axisSize,
                titleSize,
                Locale.ROOT);
    }

    Color of(Curve curve) {
        return curve.rail().isPresent() ? rails.get(curve.rail().getAsInt() % rails.size()) : ink;
    }
}
