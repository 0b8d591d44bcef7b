package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.event.KeyEvent;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import railwitness.logger.recording.store.LongSession;
import railwitness.logger.ui.screen.readings.ReadingsPanel;
import railwitness.logger.ui.screen.widgets.Numbers;

/** A session of two million readings, opened in the window and looked at from its whole length to the single reading. */
class LongSessionTest extends OnDisplay {
    private static final long READINGS = 2_000_000;
    private static final double PER_CHANNEL = READINGS / 8.0;

    @Test
    void fromTheWholeSessionToOneReadingByKeyboard() {
        Path file = folder.resolve("long.session");
        LongSession.record(file, READINGS);
        driver.ask(() -> {
            driver.window().desk().open(file, () -> driver.window().enter("findings"));
            return true;
        });
        driver.until("the findings are shown", () -> driver.window().present().equals("findings"));
        driver.key(KeyEvent.VK_R, KeyEvent.VK_CONTROL);
        driver.until("all of it is drawn", () -> driver.ask(() -> readings().upToDate()));
        driver.picture("readings-all");
        assertThat(driver.ask(() -> count())).isEqualTo(Numbers.fixed(PER_CHANNEL, 0));
        double whole = driver.ask(() -> readings().seconds());
        assertThat(whole).isBetween(PER_CHANNEL / 50 - 1, PER_CHANNEL / 50 + 1);
        for (int i = 0; i < 12; i++) {
            driver.key(KeyEvent.VK_ADD);
        }
        driver.until("the zoom is drawn", () -> driver.ask(() -> readings().upToDate()));
        assertThat(driver.ask(() -> readings().seconds())).isCloseTo(whole / 4096, within(1e-6));
        driver.picture("readings-near");
        for (int i = 0; i < 6; i++) {
            driver.key(KeyEvent.VK_ADD);
        }
        driver.until(
                "single readings are drawn", () -> driver.ask(() -> readings().upToDate()));
        assertThat(driver.ask(() -> count())).isIn("0", "1", "2");
        driver.key(KeyEvent.VK_0);
        driver.until("all of it is there again", () -> driver.ask(() -> count()).equals(Numbers.fixed(PER_CHANNEL, 0)));
        driver.key(KeyEvent.VK_R, KeyEvent.VK_CONTROL);
        driver.until(
                "the figures are back",
                () -> driver.ask(() -> driver.named("findings sheet").isShowing()));
    }

    private ReadingsPanel readings() {
        return driver.readings();
    }

    /** Readings of the plus rail in the stretch that is seen. */
    private String count() {
        return driver.sheet("channels").rows().stream()
                .filter(row -> row.cells().get(0).text().startsWith("+ rail, V"))
                .findFirst()
                .orElseThrow()
                .cells()
                .get(4)
                .text();
    }
}
