package railwitness.logger.reporting.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;

/**
 * The faces a picture is lettered in.
 *
 * @param regular for axes
 * @param medium for titles
 * @param italic for what is predicted
 */
public record Lettering(Font regular, Font medium, Font italic) {
    private static final String FOLDER = "/com/formdev/flatlaf/fonts/roboto/";

    /**
     * The faces packed in the program, one point high; {@link Font#deriveFont(float)} makes them larger.
     *
     * @throws IllegalStateException when they are not there
     */
    public static Lettering packed() {
        return new Lettering(face("Roboto-Regular.ttf"), face("Roboto-Medium.ttf"), face("Roboto-Italic.ttf"));
    }

    private static Font face(String name) {
        try (InputStream in = Lettering.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IllegalStateException("the font " + name + " is not in the program; install it anew");
            }
            return Font.createFont(Font.TRUETYPE_FONT, in);
        } catch (IOException | FontFormatException e) {
            throw new IllegalStateException("the font " + name + " cannot be read (" + e.getMessage() + ")", e);
        }
    }
}
