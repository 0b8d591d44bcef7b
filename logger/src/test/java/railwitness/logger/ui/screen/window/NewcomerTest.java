package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.KeyboardFocusManager;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.ui.screen.live.RunView;

/**
 * Somebody who has never seen the program, with an empty folder and no mouse: five facts, a rehearsal, a certificate of a
 * sound unit and one of a faulty one.
 */
class NewcomerTest extends OnDisplay {
    private static final double QUICK = 250;
    private static final int MOST_FIELDS = 40;
    private static final String GOOD = "The design sheet is in order";
    /** What the newcomer knows; everything else is looked at and kept. */
    private static final Map<String, String> FACTS = Map.of(
            "[unit] name", "wheelhouse supply",
            "[input] nominal_V", "13,2",
            "[input] fuse_A", "25",
            "[[rail]] full_load_A", "2.4",
            "[[rail]] full_load_A 1", "2.4");

    @Test
    void fiveFactsLeadToACertificateOfASoundUnitAndOfAFaultyOne() {
        driver.rehearsal(QUICK);
        assertThat(driver.text("line head")).contains("Three ways in");
        driver.key(KeyEvent.VK_N, KeyEvent.VK_CONTROL);
        driver.until("the first open field has the keyboard", () -> driver.focused("[unit] name"));
        driver.key(KeyEvent.VK_3, KeyEvent.VK_CONTROL);
        assertThat(driver.window().present()).as("examples are not powered").isEqualTo("unit");
        fill();
        assertThat(driver.ask(() -> driver.window()
                        .desk()
                        .sheets()
                        .design()
                        .content()
                        .input()
                        .nominalVolts()))
                .isEqualTo(13.2);
        assertThat(run(List.of(SessionState.COMPLETE)))
                .as("a sound unit")
                .contains("fit to return")
                .doesNotContain("not fit");
        certificate(1);
        driver.key(KeyEvent.VK_2, KeyEvent.VK_CONTROL);
        driver.focus("fault");
        driver.type("s");
        assertThat(run(List.of(SessionState.COMPLETE, SessionState.TRIPPED)))
                .as("a faulty one")
                .contains("not fit to return");
        certificate(2);
    }

    /** Enter keeps an example and goes on to the next; what is known is typed over it. */
    private void fill() {
        for (int i = 0; i < MOST_FIELDS && !driver.text("line head").startsWith(GOOD); i++) {
            String before = driver.text("line head");
            String name = driver.ask(() -> {
                Component owner =
                        KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
                return owner == null || owner.getName() == null ? "" : owner.getName();
            });
            if (FACTS.containsKey(name)) {
                driver.type(FACTS.get(name));
            }
            driver.key(KeyEvent.VK_ENTER);
            driver.until(name + " is looked at", () -> !driver.text("line head").equals(before));
        }
        assertThat(driver.text("line head")).startsWith(GOOD);
    }

    /** From wherever to the findings; answers the verdict on top of them. */
    private String run(List<SessionState> allowed) {
        for (String stage : List.of("bench", "cautions", "run")) {
            if (!driver.window().present().equals(stage)) {
                driver.controlEnter();
                driver.until(
                        stage + " is shown", () -> driver.window().present().equals(stage));
            }
        }
        driver.until("the run is over", () -> {
            if (driver.run().filter(view -> view.prompt().isPresent()).isPresent()) {
                driver.key(KeyEvent.VK_ENTER); // what the sheet does not say a person must: it is right
            }
            return driver.run().filter(RunView::over).isPresent();
        });
        assertThat(driver.run().orElseThrow().ended().orElseThrow().state())
                .as(driver.run().orElseThrow().trip().orElse("no trip"))
                .isIn(allowed);
        driver.until(
                "the findings are open",
                () -> driver.ask(() -> driver.window().desk().session().isPresent()));
        driver.controlEnter();
        driver.until(
                "the findings are shown",
                () -> driver.sheet("findings sheet").rows().size() > 10);
        return driver.text("verdict");
    }

    private void certificate(int count) {
        driver.controlEnter();
        driver.until("the certificate is seen", () -> driver.ask(this::canBeKept));
        driver.controlEnter();
        driver.until("the certificate is kept", () -> files().size() == count);
        driver.until("back at the findings", () -> driver.ask(() -> !canBeKept()));
    }

    private boolean canBeKept() {
        return driver.window().line().acts().stream().anyMatch(act -> act.key().equals("keep"));
    }

    private List<Path> files() {
        try (var all = Files.list(folder)) {
            return all.filter(file -> file.toString().endsWith(".pdf")).toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
