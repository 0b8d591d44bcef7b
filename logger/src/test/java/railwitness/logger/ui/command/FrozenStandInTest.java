package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.drivers.line.PseudoTerminal;

/** Every instrument stands still at half load, for longer than anybody waits, and then goes on: two real processes. */
@Timeout(400)
@Execution(ExecutionMode.CONCURRENT)
class FrozenStandInTest {
    private static final int FROZEN_SECONDS = 12;
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
            loads_pct = [50]
            [[stage]]
            kind = "hold"
            load_pct = 50
            duration_s = 600
            """;

    @TempDir
    Path folder;

    @Test
    void offIsSentUntilTheSupplySaysSo() throws IOException, InterruptedException {
        if (!PseudoTerminal.available()) {
            System.out.println("skipped: this system has no pseudo-terminals");
        }
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        Path bench = folder.resolve("bench.toml");
        Path session = folder.resolve("frozen.session");
        Process far = started("far.txt", "stand-in", "--bench-out", bench.toString());
        try {
            await("the stand-in", "far.txt", "ready");
            Process run = started(
                    "run.txt",
                    "run",
                    "--design",
                    "../sessions-sample/demo/design.toml",
                    "--bench",
                    patient(bench).toString(),
                    "--plan",
                    Files.writeString(folder.resolve("plan.toml"), PLAN).toString(),
                    "--out",
                    session.toString(),
                    "--acknowledge",
                    "Ann Other");
            pressEnter(run);
            await("half load", "run.txt", ": hold");
            Thread.sleep(500);
            signal("STOP", far);
            Thread.sleep(FROZEN_SECONDS * 1000L);
            assertThat(run.isAlive()).as(text("run.txt")).isTrue();
            assertThat(text("run.txt")).contains("open the disconnect").doesNotContain("output off; rails");
            signal("CONT", far);

            assertThat(run.waitFor(120, TimeUnit.SECONDS)).as(text("run.txt")).isTrue();
            assertThat(text("far.txt").strip()).endsWith("supply output off");
        } finally {
            far.destroy();
        }
        Found found = Found.in(session);
        assertThat(found.state()).isEqualTo("tripped");
        assertThat(found.json().get("events").toString()).contains("the supply says off now");
    }

    /** The guardian's patience is for a busy computer. */
    private static Path patient(Path bench) throws IOException {
        String sheet = Files.readString(bench).replace("[bench]", "[bench]\npatience_s = 8");
        return Files.writeString(bench, sheet);
    }

    /** Whatever a bench of its own would ask is answered. */
    private static void pressEnter(Process run) {
        Thread thread = new Thread(() -> {
            try (OutputStream keyboard = run.getOutputStream()) {
                while (run.isAlive()) {
                    keyboard.write('\n');
                    keyboard.flush();
                    Thread.sleep(1000);
                }
            } catch (IOException over) {
                return;
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        thread.setDaemon(true);
        thread.start();
    }

    private static void signal(String name, Process process) throws IOException, InterruptedException {
        new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                .start()
                .waitFor();
    }

    private Process started(String output, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "railwitness.logger.ui.command.Main"));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve(output).toFile())
                .start();
    }

    private String text(String output) throws IOException {
        return Files.readString(folder.resolve(output));
    }

    private void await(String what, String output, String words) throws IOException, InterruptedException {
        Instant limit = Instant.now().plus(Duration.ofSeconds(150));
        while (!text(output).contains(words)) {
            assertThat(Instant.now())
                    .as("waiting for " + what + ": " + text(output))
                    .isBefore(limit);
            Thread.sleep(50);
        }
    }
}
