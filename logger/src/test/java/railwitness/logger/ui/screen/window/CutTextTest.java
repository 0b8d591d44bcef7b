package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import javax.swing.AbstractButton;
import javax.swing.JTextField;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.converter.FaultCode;
import railwitness.logger.ui.screen.theme.Theme;
import railwitness.logger.ui.screen.widgets.Label;

/**
 * Every stage at its least size and at 100, 150 and 200 %: every text that is painted is caught on its way to the paper,
 * whatever paints it, and must stand wholly in the place where it is seen; three dots cut nothing.
 */
class CutTextTest {
    private static final int[] SCALES = {100, 150, 200};
    private static final int WIDTH = 1024;
    private static final int HEIGHT = 700;
    private static final long PATIENCE_MILLIS = 120_000;
    private static final double QUICK = 250;

    @TempDir
    Path folder;

    private Optional<Path> whole = Optional.empty();

    @AfterEach
    void usualScale() {
        System.clearProperty("flatlaf.uiScale");
    }

    @Test
    void nothingIsCutOnAnyStageAtAnyScale() throws Exception {
        Display.required();
        List<String> cut = new ArrayList<>();
        for (int percent : SCALES) {
            Window window = Screenshots.onScreen(() -> opened(percent));
            try {
                look(window, percent, cut);
            } finally {
                Screenshots.onScreen(() -> {
                    window.frame().dispose();
                    return true;
                });
            }
        }
        assertThat(cut).as("texts that are cut, with stage and scale").isEmpty();
    }

    private Window opened(int percent) {
        Window window = Opening.of(folder, Theme.LIGHT, "test")
                .scaled(OptionalInt.of(percent))
                .open();
        window.frame().setSize(WIDTH, HEIGHT);
        window.frame().validate();
        return window;
    }

    private void look(Window window, int percent, List<String> cut) throws Exception {
        for (String stage : List.of("unit", "bench", "cautions", "run", "sessions")) {
            seen(window, stage, percent, cut);
        }
        run(window, percent, cut);
        seen(window, "run", percent, cut);
        seen(window, "findings", percent, cut);
        seen(window, "sessions", percent, cut);
    }

    /** A faulty unit has the longest sentences; the first run is kept whole, later ones are only seen to go on. */
    private void run(Window window, int percent, List<String> cut) throws Exception {
        Screenshots.onScreen(() -> {
            window.desk()
                    .rehearsal(window.desk()
                            .rehearsal()
                            .withPace(QUICK)
                            .withFault(Optional.of(FaultCode.TIRED_CAPACITOR)));
            window.enter("cautions");
            List<railwitness.logger.ui.screen.stage.Act> acts = window.line().acts();
            acts.get(acts.size() - 1).done().run();
            return true;
        });
        until(() -> window.desk().run().isPresent());
        until(() -> window.desk()
                .view()
                .filter(view -> view.liveStep() >= 2 || view.over())
                .isPresent());
        caught(window, "running", percent, cut);
        if (whole.isPresent()) {
            Screenshots.onScreen(() -> {
                window.desk().run().orElseThrow().switchOff("seen");
                return true;
            });
        }
        until(() -> window.desk().session().isPresent());
        if (whole.isEmpty()) {
            whole = Optional.of(Screenshots.onScreen(
                    () -> window.desk().session().orElseThrow().file()));
            return;
        }
        Screenshots.onScreen(() -> {
            window.desk().open(whole.get(), () -> {});
            return true;
        });
        until(() -> window.desk().session().orElseThrow().file().equals(whole.get()));
    }

    private void seen(Window window, String stage, int percent, List<String> cut) throws Exception {
        Screenshots.onScreen(() -> {
            window.enter(stage);
            return true;
        });
        Thread.sleep(stage.equals("findings") || stage.equals("sessions") ? 1200 : 250);
        caught(window, stage, percent, cut);
    }

    private static void caught(Window window, String stage, int percent, List<String> cut) throws Exception {
        Set<String> found = Screenshots.onScreen(() -> {
            Container content = window.frame().getContentPane();
            content.validate();
            return cut(content, stage + " at " + percent + " %: ");
        });
        cut.addAll(found);
        Path file = Path.of("target", "screens", "cut-" + stage + "-" + percent + ".png");
        Screenshots.onScreen(() -> {
            java.nio.file.Files.createDirectories(file.getParent());
            Screenshots.picture(window.frame().getContentPane(), file);
            return true;
        });
    }

    private static Set<String> cut(Container content, String where) {
        Set<String> cut = new LinkedHashSet<>();
        List<TextRecorder.Drawn> texts = new ArrayList<>();
        BufferedImage image = new BufferedImage(content.getWidth(), content.getHeight(), BufferedImage.TYPE_INT_RGB);
        content.printAll(new TextRecorder(image.createGraphics(), texts));
        Set<String> written = new LinkedHashSet<>();
        written(content, written);
        for (TextRecorder.Drawn one : texts) {
            boolean free = written.contains(one.text().strip());
            if (one.cutSideways() && !free) {
                cut.add(where + "'" + one.text() + "' goes beyond its place");
            }
            if (one.text().length() > 1 && one.text().matches(".*(\u2026|\\.\\.\\.)$") && !free) {
                cut.add(where + "'" + one.text() + "' is cut");
            }
        }
        assertThat(texts).as(where).hasSizeGreaterThan(10);
        lowOnes(content, where, cut);
        return cut;
    }

    /** What a person writes may be longer than its field; it scrolls as it is typed. A number may not. */
    private static void written(Container in, Collection<String> all) {
        for (Component one : in.getComponents()) {
            if (one instanceof JTextField field && !field.getText().matches("[\u2212-]?[\\d.,]+")) {
                all.add(field.getText());
            }
            if (one instanceof Container inner) {
                written(inner, all);
            }
        }
    }

    /** Words that need more lines than their place has. */
    private static void lowOnes(Container in, String where, Collection<String> cut) {
        for (Component one : in.getComponents()) {
            if (!one.isShowing()) {
                continue;
            }
            boolean low = one.getHeight() < one.getPreferredSize().height - 2;
            boolean text = one instanceof Label label && !label.getText().isEmpty()
                    || one instanceof JTextComponent && !(one instanceof JTextField)
                    || one instanceof AbstractButton button && !button.getText().isEmpty();
            boolean narrow = one instanceof AbstractButton && one.getWidth() < one.getMinimumSize().width;
            if (text && one.getHeight() > 0 && (low || narrow)) {
                cut.add(where + one.getName() + " " + words(one) + " is " + one.getWidth() + " x " + one.getHeight()
                        + " and needs " + one.getPreferredSize());
            }
            if (one instanceof Container inner) {
                lowOnes(inner, where, cut);
            }
        }
    }

    private static String words(Component one) {
        return one instanceof JTextComponent text
                ? text.getText()
                : one instanceof AbstractButton button ? button.getText() : ((Label) one).getText();
    }

    private static void until(Callable<Boolean> holds) throws Exception {
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (!Screenshots.onScreen(holds)) {
            assertThat(System.currentTimeMillis()).as("waited in vain").isLessThan(end);
            Thread.sleep(20);
        }
    }
}
