package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.KeyboardFocusManager;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JRadioButton;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Test;
import railwitness.logger.ui.screen.widgets.RuledSheet;

/** Everything that can be used is reached with the Tab key alone, and says aloud what it is. */
class KeyboardTest extends OnDisplay {
    private static final int MOST_TABS = 250;

    @Test
    void tabReachesEverythingOnEveryStage() {
        for (String stage : List.of("bench", "cautions", "run", "sessions")) {
            enter(stage);
            Set<Component> wanted = new LinkedHashSet<>(driver.ask(this::usable));
            assertThat(wanted).as(stage).hasSizeGreaterThan(3);
            Set<Component> reached = new LinkedHashSet<>();
            for (int i = 0; i < MOST_TABS && !reached.containsAll(wanted); i++) {
                reached.add(owner());
                driver.tab();
            }
            wanted.removeAll(reached);
            assertThat(driver.ask(() -> wanted.stream()
                            .map(one -> one.getClass().getSimpleName() + " " + one.getName())
                            .toList()))
                    .as(stage)
                    .isEmpty();
        }
    }

    @Test
    void everythingUsableHasAnAccessibleName() {
        for (String stage : List.of("unit", "bench", "cautions", "run", "sessions")) {
            enter(stage);
            assertThat(driver.ask(() -> usable().stream()
                            .filter(one -> {
                                String name = one.getAccessibleContext().getAccessibleName();
                                return name == null || name.isBlank();
                            })
                            .map(one -> one.getClass().getSimpleName() + " " + one.getName())
                            .toList()))
                    .as(stage)
                    .isEmpty();
        }
    }

    @Test
    void f1ShowsThePageOfTheStageAndGoesBack() {
        for (String stage : List.of("bench", "cautions", "sessions")) {
            enter(stage);
            driver.key(java.awt.event.KeyEvent.VK_F1);
            driver.until(
                    "its page is shown",
                    () -> driver.named("manual title").isShowing()
                            && driver.text("manual title").equalsIgnoreCase(stage));
            driver.key(java.awt.event.KeyEvent.VK_F1);
            driver.until(
                    "the stage is back", () -> !driver.named("manual title").isShowing());
            assertThat(driver.window().present()).isEqualTo(stage);
        }
    }

    private void enter(String stage) {
        driver.ask(() -> {
            driver.window().enter(stage);
            return true;
        });
        driver.until("the focus is in " + stage, () -> owner() != null);
    }

    private Component owner() {
        return driver.ask(
                () -> KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner());
    }

    private List<Component> usable() {
        List<Component> all = new ArrayList<>();
        collect(driver.window().frame().getContentPane(), all);
        return all;
    }

    /** Of radio buttons that belong together, Tab reaches the chosen one and the arrow keys the others. */
    private static void collect(Container in, List<Component> all) {
        for (Component one : in.getComponents()) {
            boolean kind = one instanceof AbstractButton
                    || one instanceof JTextComponent
                    || one instanceof JComboBox
                    || one instanceof RuledSheet;
            boolean grouped = one instanceof JRadioButton radio && !radio.isSelected();
            if (kind && one.isShowing() && one.isEnabled() && one.isFocusable() && !grouped) {
                all.add(one);
            } else if (one instanceof Container inner) {
                collect(inner, all);
            }
        }
    }
}
