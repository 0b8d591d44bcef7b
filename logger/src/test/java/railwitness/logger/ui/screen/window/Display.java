package railwitness.logger.ui.screen.window;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.GraphicsEnvironment;
import java.util.Optional;

/** Whether windows can be opened here. */
final class Display {
    private Display() {}

    /** Where none can, the test says so and is skipped. */
    static void required() {
        Optional<String> lacking = lacking();
        lacking.ifPresent(System.out::println);
        assumeTrue(lacking.isEmpty(), () -> lacking.orElse(""));
    }

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
