package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.fixture.ProgramProcess;
import railwitness.logger.fixture.ShortPlan;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;

/** A rehearsal in a process of its own is killed; the next window offers what it left. */
class BrokenOffTest {
    private static final int STEPS = 2;
    private static final String PLAN = ShortPlan.of(0.4, "power-up", "no-load", "load-sweep", "hold; duration_s = 600");

    @TempDir
    private Path folder;

    @TempDir
    private Path sheets;

    @BeforeEach
    void displayIsThere() {
        Display.required();
    }

    @Test
    void aKilledRunIsOfferedOnceAndOpenedByKeyboard() throws IOException, InterruptedException {
        Path session = folder.resolve("killed.session");
        kill(session);
        byte[] left = Files.readAllBytes(session);

        try (WindowDriver driver = new WindowDriver(folder)) {
            driver.until("it asks", () -> driver.named("question") != null);
            assertThat(driver.text("question"))
                    .startsWith("A run of Saloon amplifier supply 0412, ")
                    .endsWith("broke off without an orderly end. Everything until then is kept.");
            driver.until(
                    "its first answer has the focus",
                    () -> driver.ask(() -> driver.named("answer Open it").isFocusOwner()));
            driver.picture("broken-off");
            driver.key(KeyEvent.VK_ENTER);
            driver.until(
                    "the findings are shown",
                    () -> driver.window().present().equals("findings")
                            && driver.ask(
                                    () -> driver.sheet("findings sheet").rows().size() > 5));
            assertThat(driver.text("findings state")).startsWith("Interrupted: recording broke off");
            driver.picture("broken-off-findings");
            driver.until("the answer is remembered", () -> Files.exists(folder.resolve("window.properties")));
            driver.ask(() -> {
                driver.window().frame().dispose();
                return true;
            });
        }
        assertThat(Files.readAllBytes(session)).isEqualTo(left);

        try (WindowDriver driver = new WindowDriver(folder)) {
            driver.key(KeyEvent.VK_6, KeyEvent.VK_CONTROL);
            driver.until(
                    "the list is there",
                    () -> driver.ask(() -> driver.sheet("sessions list").rows().size() == 1));
            driver.until("it counts what broke off", () -> driver.text("line caption")
                    .startsWith("Interrupted"));
            assertThat(driver.named("question")).isNull();
        }
    }

    /** Runs until some steps are measured, then kills it without a warning. */
    private void kill(Path session) throws IOException, InterruptedException {
        ProgramProcess run = ProgramProcess.started(
                sheets.resolve("said.txt"),
                "rehearse",
                "--design",
                "../sessions-sample/demo/design.toml",
                "--bench",
                "../sessions-sample/demo/bench.toml",
                "--plan",
                Files.writeString(sheets.resolve("plan.toml"), PLAN).toString(),
                "--pace",
                "real",
                "--out",
                session.toString());
        run.awaitSteps(STEPS, session);
        run.kill();
        try (SessionFile file = SessionFile.open(session)) {
            assertThat(file.state()).isEqualTo(SessionState.INTERRUPTED);
        }
    }
}
