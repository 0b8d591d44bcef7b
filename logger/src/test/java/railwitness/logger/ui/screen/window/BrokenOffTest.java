package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StoreException;

/** A rehearsal in a process of its own is killed; the next window offers what it left. */
class BrokenOffTest {
    private static final int STEPS = 2;
    private static final String PLAN = """
            [plan]
            settle_at_most_s = 0
            average_s = 0.4
            [[stage]]
            kind = "power-up"
            current_limit_A = 5
            [[stage]]
            kind = "no-load"
            [[stage]]
            kind = "load-sweep"
            [[stage]]
            kind = "hold"
            duration_s = 600
            """;

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
        Path said = sheets.resolve("said.txt");
        Process run = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "railwitness.logger.ui.command.Main",
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
                        session.toString())
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        Instant limit = Instant.now().plus(Duration.ofSeconds(60));
        while (measured(session) < STEPS) {
            assertThat(Instant.now())
                    .as("waiting for steps: " + Files.readString(said))
                    .isBefore(limit);
            Thread.sleep(50);
        }
        run.destroyForcibly().waitFor();
        try (SessionFile file = SessionFile.open(session)) {
            assertThat(file.state()).isEqualTo(SessionState.INTERRUPTED);
        }
    }

    private static long measured(Path session) {
        if (!Files.exists(session)) {
            return 0;
        }
        try (SessionFile file = SessionFile.open(session)) {
            return file.steps().size();
        } catch (StoreException e) {
            return 0;
        }
    }
}
