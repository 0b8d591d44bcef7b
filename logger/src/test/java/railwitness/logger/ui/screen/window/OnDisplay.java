package railwitness.logger.ui.screen.window;

import java.nio.file.Path;
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
        Display.required();
        driver = new WindowDriver(folder);
    }

    @AfterEach
    void closeWindow() {
        if (driver != null) {
            driver.close();
        }
    }
}
