package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railwitness.logger.fixture.ShortPlan;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.ui.screen.live.Prompt;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.safety.power.PowerState;

/** A supply that has only knobs, in the window: set and confirmed by keys, off said large until a person types it. */
class KnobsWindowTest extends OnDisplay {
    private static final double QUICK = 30;

    private Optional<Prompt> prompt() {
        return driver.run().flatMap(RunView::prompt);
    }

    private void begin() {
        driver.ask(() -> {
            Sheets demo = Sheets.demo();
            driver.window()
                    .desk()
                    .sheets(new Sheets(
                            demo.design(),
                            Sheets.bench(Path.of("..", "sessions-sample", "benches", "one-meter-and-knobs.toml")),
                            Sheets.plan("plan.toml", ShortPlan.of(0.5, "power-up", "no-load"))));
            driver.window().enter("cautions");
            return true;
        });
        driver.rehearsal(QUICK);
        driver.controlEnter();
        driver.until("a run is there", () -> driver.run().isPresent());
    }

    /** Drawn, its words large enough to be read from the bench. */
    private void shown(Prompt now) {
        driver.until("the question is drawn", () -> driver.named("question") != null && inside("question"));
        assertThat(fontSize()).isGreaterThan(24);
        if (now.kind() == Prompt.Kind.SWITCH_OFF) {
            driver.until("its field is drawn", () -> driver.named("answer") != null && inside("answer"));
        }
    }

    private int fontSize() {
        Component found = driver.named("question");
        return driver.ask(() -> found.getFont().getSize());
    }

    private boolean inside(String name) {
        Component found = driver.named(name);
        return driver.ask(() -> found.isShowing()
                && found.getHeight() > 0
                && found.getLocationOnScreen().y + found.getHeight()
                        <= driver.window().frame().getLocationOnScreen().y
                                + driver.window().frame().getHeight());
    }

    @Test
    void theRunAsksToSetAndConfirmAndOffIsSaidLargeUntilItIsTyped() {
        begin();
        List<String> asked = new ArrayList<>();
        driver.until("the output is on", () -> {
            prompt().ifPresent(now -> {
                shown(now);
                if (asked.isEmpty() || !asked.get(asked.size() - 1).equals(now.sentence())) {
                    asked.add(now.sentence());
                    driver.picture("knobs-" + asked.size());
                }
                if (now.kind() == Prompt.Kind.SWITCH_OFF) {
                    driver.type("off");
                }
                driver.key(KeyEvent.VK_ENTER);
            });
            return driver.run().orElseThrow().power() == PowerState.ON;
        });
        assertThat(asked).anyMatch(words -> words.contains("voltage")).anyMatch(words -> words.contains("current"));
        driver.key(KeyEvent.VK_ESCAPE);
        driver.until("off is asked for", () -> prompt().filter(now -> now.kind() == Prompt.Kind.SWITCH_OFF)
                .isPresent());
        shown(prompt().orElseThrow());
        driver.picture("knobs-off");
        driver.key(KeyEvent.VK_ENTER);
        assertThat(prompt()).as("the mere press of a key is no answer").isPresent();
        driver.type("off");
        driver.key(KeyEvent.VK_ENTER);
        driver.until("the run is over", () -> {
            if (prompt().isPresent()) {
                driver.key(KeyEvent.VK_ENTER);
            }
            return driver.run().filter(RunView::over).isPresent();
        });
        driver.picture("knobs-over");
        assertThat(driver.run().orElseThrow().ended().orElseThrow().state()).isEqualTo(SessionState.STOPPED);
        assertThat(driver.run().orElseThrow().ended().orElseThrow().offConfirmed())
                .isTrue();
    }
}
