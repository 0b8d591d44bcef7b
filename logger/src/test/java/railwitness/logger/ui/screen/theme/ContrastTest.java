package railwitness.logger.ui.screen.theme;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Contrast by the relative luminance of WCAG 2.2 (W3C Recommendation), success criteria 1.4.3 and 1.4.11. */
class ContrastTest {
    private static final double TEXT = 4.5;
    private static final double GRAPHIC = 3.0;

    /** Source: WCAG 2.2, definition of contrast ratio: black on white is 21 : 1. */
    @Test
    void blackOnWhiteIsTwentyOneToOne() {
        assertThat(contrast(Color.BLACK, Color.WHITE)).isBetween(20.99, 21.01);
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void everyTextIsReadableOnEveryGroundItStandsOn(Theme theme) {
        Palette palette = theme.palette();
        for (Color ground : palette.grounds()) {
            for (Color text : palette.texts()) {
                boolean pencilOnBand = text.equals(palette.pencil()) && ground.equals(palette.band());
                if (!pencilOnBand) {
                    assertThat(contrast(text, ground))
                            .as("%s: %s on %s", theme, text, ground)
                            .isGreaterThanOrEqualTo(TEXT);
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void theLiveAndTheTrippedBandAreReadable(Theme theme) {
        Palette palette = theme.palette();
        assertThat(contrast(palette.onLive(), palette.live())).isGreaterThanOrEqualTo(TEXT);
        assertThat(contrast(palette.onTrip(), palette.trip())).isGreaterThanOrEqualTo(TEXT);
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void tracesStandOutFromTheirGround(Theme theme) {
        Palette palette = theme.palette();
        for (Color ground : new Color[] {palette.sheet(), palette.tint()}) {
            palette.rails().forEach(rail -> assertThat(contrast(rail, ground)).isGreaterThanOrEqualTo(GRAPHIC));
            assertThat(contrast(palette.input(), ground)).isGreaterThanOrEqualTo(GRAPHIC);
        }
    }

    private static double contrast(Color one, Color other) {
        double lighter = Math.max(luminance(one), luminance(other));
        double darker = Math.min(luminance(one), luminance(other));
        return (lighter + 0.05) / (darker + 0.05);
    }

    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed())
                + 0.7152 * linear(colour.getGreen())
                + 0.0722 * linear(colour.getBlue());
    }

    private static double linear(int channel) {
        double share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
