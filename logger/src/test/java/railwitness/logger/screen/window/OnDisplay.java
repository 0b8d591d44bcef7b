package railwitness.logger.screen.window;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A test with a window on a display; where there is none it says so and is skipped. */
abstract class OnDisplay {
    @TempDir
    Path folder;

    WindowDriver driver;

    @BeforeEach
    void openWindow() {
        Optional<String> lacking = Display.lacking();
        lacking.ifPresent(System.out::println);
        assumeTrue(lacking.isEmpty(), () -> lacking.orElse(""));
        driver = new WindowDriver(folder);
    }

    @AfterEach
    void closeWindow() {
        if (driver != null) {
            driver.close();
        }
    }

    /** Whether the component of this name has the focus. */
    boolean focused(String name) {
        var found = driver.named(name);
        return found != null && driver.ask(found::isFocusOwner);
    }
}
