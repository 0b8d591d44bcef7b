package railwitness.logger.screen.window;

import java.awt.GraphicsEnvironment;
import java.util.Optional;

/** Whether windows can be opened here. */
final class Display {
    private Display() {}

    /** Why none can, with how to have one; empty when they can. */
    static Optional<String> lacking() {
        try {
            if (GraphicsEnvironment.isHeadless()) {
                return Optional.of(advice("DISPLAY is not set"));
            }
            GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices();
            return Optional.empty();
        } catch (RuntimeException | Error e) {
            return Optional.of(advice(String.valueOf(e.getMessage())));
        }
    }

    private static String advice(String why) {
        return "no display (" + why + "): tests of the window are skipped. To have one: Xvfb :7 & DISPLAY=:7 openbox &"
                + " export DISPLAY=:7, with a JDK that is not headless";
    }
}
