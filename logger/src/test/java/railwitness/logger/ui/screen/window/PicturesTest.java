package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.swing.AbstractButton;
import org.junit.jupiter.api.Test;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Theme;
import railwitness.logger.ui.screen.trace.TraceView;

/** Every stage, light and dark, as a picture in {@code target/screens} for people to look at; no button is cut off in any. */
class PicturesTest extends OnDisplay {
    private static final double QUICK = 250;

    @Test
    void everyStageInBothThemes() {
        for (String stage : List.of("unit", "bench", "cautions", "run")) {
            enter(stage);
            pictures(stage);
        }
        driver.rehearsal(QUICK);
        enter("cautions");
        driver.controlEnter();
        driver.until("a run is there", () -> driver.run().isPresent());
        driver.until("it goes on", () -> driver.run().orElseThrow().liveStep() >= 2);
        pictures("running");
        driver.until("the run is over", () -> driver.run().filter(RunView::over).isPresent());
        driver.until(
                "the findings are open",
                () -> driver.ask(() -> driver.window().desk().session().isPresent()));
        enter("findings");
        driver.until(
                "the findings are shown",
                () -> driver.sheet("findings sheet").rows().size() > 20);
        pictures("findings");
        driver.key(java.awt.event.KeyEvent.VK_R, java.awt.event.KeyEvent.VK_CONTROL);
        driver.until(
                "the readings are drawn",
                () -> driver.ask(() -> driver.readings().upToDate()));
        pictures("readings");
        TraceView plus = (TraceView) driver.named("readings plus.voltage");
        assertThat(driver.ask(() -> plus.model().stroke().colour()))
                .as("the traces follow the theme")
                .isEqualTo(driver.ask(() -> Look.palette().rail(0)));
        enter("sessions");
        driver.until(
                "the session is listed",
                () -> driver.sheet("sessions list").rows().size() == 1);
        pictures("sessions");
    }

    private void enter(String stage) {
        driver.ask(() -> {
            driver.window().enter(stage);
            return true;
        });
    }

    private void pictures(String name) {
        for (Theme theme : Theme.values()) {
            driver.ask(() -> {
                driver.window().theme(theme);
                return true;
            });
            driver.picture(name + "-" + theme.name().toLowerCase(Locale.ROOT));
            renewed(name, theme);
            assertThat(driver.ask(() -> cut(driver.window().frame().getContentPane())))
                    .isEmpty();
        }
    }

    /** The pictures of the manual, written anew with {@code -Drailwitness.pictures=write}. */
    private static void renewed(String name, Theme theme) {
        String manual = Map.of("running", "window-run.png", "findings", "window-findings.png")
                .getOrDefault(name, "");
        if (theme != Theme.LIGHT || manual.isEmpty() || !"write".equals(System.getProperty("railwitness.pictures"))) {
            return;
        }
        try {
            Files.copy(
                    Path.of("target", "screens", name + "-light.png"),
                    Path.of("docs", manual),
                    StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Buttons that are narrower or lower than their words. */
    private static List<String> cut(Container in) {
        List<String> names = new ArrayList<>();
        for (Component one : in.getComponents()) {
            boolean narrow =
                    one.getWidth() < one.getMinimumSize().width || one.getHeight() < one.getMinimumSize().height;
            if (one instanceof AbstractButton button && button.isShowing() && narrow) {
                names.add(button.getName() + " " + button.getText());
            }
            if (one instanceof Container inner && one.isVisible()) {
                names.addAll(cut(inner));
            }
        }
        return names;
    }
}
