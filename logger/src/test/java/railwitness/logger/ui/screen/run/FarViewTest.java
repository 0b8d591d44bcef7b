package railwitness.logger.ui.screen.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Theme;
import railwitness.logger.ui.screen.window.TextRecorder;

/** What is meant for two metres is that large, at every size of the window, and none of it is cut or stands on another. */
class FarViewTest {
    /** 24 inches across the diagonal, 1600 x 1000. */
    private static final double MILLIMETRES = 0.323;

    private static final double LEAST_CAP = 20;

    @BeforeEach
    void look() {
        Look.install(Theme.LIGHT);
    }

    private static FarModel.Line rail(String name, int colour, String now, String difference) {
        OptionalDouble size = OptionalDouble.of(37.1);
        return new FarModel.Line(
                name,
                colour,
                now,
                "V",
                "\u221237.1",
                difference,
                "2.3 V above 34.8 V",
                false,
                new FarModel.Strip(size, size, OptionalDouble.of(34.8), OptionalDouble.of(45)));
    }

    private static FarModel model() {
        return new FarModel(
                "Cross load + 100 %, rest 10 %",
                "step 5 of 12",
                List.of(
                        rail("+ rail", 0, "37.11", ""),
                        rail("\u2212 rail", 1, "\u221235.53", "1.6 V short"),
                        rail("input", -1, "20.79", "0.4 V more")),
                "10.7 \u03a9",
                "3.48 A on +, 3.33 A on \u2212",
                "averaging, done in",
                "18 s",
                List.of(
                        new FarModel.Near("50 %", List.of("38.15", "\u221237.04"), false, false),
                        new FarModel.Near("100 %", List.of("being read"), true, false),
                        new FarModel.Near("11 V", List.of("33.1", "\u221233.1"), false, true)));
    }

    private static List<TextRecorder.Drawn> drawn(int width, int height) {
        FarView view = new FarView();
        view.setSize(width, height);
        view.show(model());
        List<TextRecorder.Drawn> texts = new ArrayList<>();
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        TextRecorder recorder = new TextRecorder(image.createGraphics(), texts);
        recorder.setClip(0, 0, width, height);
        view.paintComponent(recorder);
        return texts;
    }

    @Test
    void liveValuesHaveTwentyMillimetresOfCap() {
        for (String live : List.of("37.11", "\u221235.53", "20.79")) {
            Rectangle place = drawn(1600, 684).stream()
                    .filter(one -> one.text().equals(live))
                    .findFirst()
                    .orElseThrow()
                    .place();
            assertThat(place.height * MILLIMETRES).as(live).isGreaterThanOrEqualTo(LEAST_CAP);
        }
    }

    @Test
    void nothingIsCutAndNothingStandsOnAnotherAtAnySize() {
        for (int[] size : new int[][] {{1600, 684}, {1280, 560}, {1024, 400}, {1024, 300}, {2560, 1200}, {900, 700}}) {
            List<TextRecorder.Drawn> texts = drawn(size[0], size[1]);
            assertThat(texts).hasSizeGreaterThan(20);
            assertThat(texts.stream().filter(TextRecorder.Drawn::cutSideways).map(TextRecorder.Drawn::text))
                    .as(size[0] + " x " + size[1])
                    .isEmpty();
            for (TextRecorder.Drawn one : texts) {
                for (TextRecorder.Drawn other : texts) {
                    boolean apart = one == other || !one.place().intersects(other.place());
                    assertThat(apart)
                            .as(size[0] + " x " + size[1] + ": " + one + " and " + other)
                            .isTrue();
                }
            }
        }
    }
}
