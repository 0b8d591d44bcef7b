package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A run in a process of its own, on real ports, that is killed or interrupted while the output is on. It waits more than it
 * works, so it goes on beside other tests.
 */
@Execution(ExecutionMode.CONCURRENT)
class EndedFromOutsideTest {
    private static final String PLAN = """
            [plan]
            settle_at_most_s = 0
            average_s = 0.4
            [[stage]]
            kind = "standby"
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

    private final List<Process> runs = new ArrayList<>();

    @TempDir
    Path folder;

    @Test
    void aKilledRunIsSwitchedOffAndLeavesAReadableSession() throws IOException, InterruptedException {
        Path session = folder.resolve("killed.session");
        try (TableBench bench = new TableBench()) {
            Process run = started(bench, session);
            await("the load sweep", () -> bench.unit.amps("plus") == 4);
            Thread.sleep(2500);
            run.destroyForcibly().waitFor();

            await("the guardian to switch off", () -> !bench.unit.outputOn);
        }
        Said said = Said.by("findings", session.toString());
        assertThat(said.exitCode()).isZero();
        assertThat(said.out()).contains("interrupted").contains("load-sweep 25 %");
        assertThat(Found.in(session).state()).isEqualTo("interrupted");
    }

    /** The serial library would have a closed terminal ignored. */
    @ParameterizedTest
    @CsvSource({"INT,(Ctrl-C)", "TERM,(TERM)", "HUP,(HUP)"})
    void eachSignalIsOneStopUnderItsOwnName(String signal, String name) throws IOException, InterruptedException {
        Path session = folder.resolve("stopped.session");
        try (TableBench bench = new TableBench()) {
            Process run = started(bench, session);
            await("the load sweep", () -> bench.unit.amps("plus") == 4);
            signal(signal, run);

            assertThat(run.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
            assertThat(bench.unit.amps("plus")).isZero();
        }
        assertThat(Found.in(session).state()).isEqualTo("stopped");
        List<String> stops = new ArrayList<>();
        Found.in(session).json().get("events").forEach(event -> {
            if (event.toString().contains("stopped:") || event.toString().contains("stopped by hand")) {
                stops.add(event.toString());
            }
        });
        assertThat(stops).isNotEmpty().allMatch(words -> words.contains(name));
    }

    /** Whoever typed has gone, and the output is on. */
    @Test
    void theEndOfTheInputUnderPowerIsAStop() throws IOException, InterruptedException {
        Path session = folder.resolve("input.session");
        try (TableBench bench = new TableBench()) {
            Process run = started(bench, session);
            await("the load sweep", () -> bench.unit.amps("plus") == 4);
            run.getOutputStream().close();

            assertThat(run.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
        }
        assertThat(Found.in(session).state()).isEqualTo("stopped");
        assertThat(Found.in(session).json().get("events").toString()).contains("the input has ended");
    }

    /** A real terminal, whose window is closed while the output is on: the system hangs up on the program. */
    @Test
    void closingTheTerminalSwitchesOffUnderTheNameOfTheHangUp() throws IOException, InterruptedException {
        Path session = folder.resolve("closed.session");
        try (TableBench bench = new TableBench();
                ControllingTerminal window = new ControllingTerminal()) {
            Process run = window.started(command(bench, session));
            Files.writeString(folder.resolve("run.txt"), "on " + window);
            await("the load sweep", () -> bench.unit.amps("plus") == 4);
            assertThat(window.shown()).contains("load-sweep");
            window.hangUp();

            assertThat(run.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
            assertThat(bench.unit.amps("plus")).isZero();
        }
        Found found = Found.in(session);
        assertThat(found.state()).isEqualTo("stopped");
        assertThat(found.json().get("events").toString())
                .contains("the terminal was closed (HUP)")
                .doesNotContain("the input has ended");
    }

    /** The remote turn-on is switched by hand here, and nobody is there who could: no power at all. */
    @ParameterizedTest
    @ValueSource(strings = {"/dev/null", "a closed pipe"})
    void withoutAnInputARunThatWillAskEndsBeforePower(String input) throws IOException, InterruptedException {
        Path session = folder.resolve("nobody.session");
        try (TableBench bench = new TableBench()) {
            ProcessBuilder builder = new ProcessBuilder(command(bench, session))
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("run.txt").toFile());
            Path sheet = folder.resolve("bench.toml");
            Files.writeString(sheet, Files.readString(sheet).replace("drives_remote = true", ""));
            boolean none = input.equals("/dev/null");
            Process run = (none ? builder.redirectInput(new File(input)) : builder).start();
            if (!none) {
                run.getOutputStream().close();
            }

            assertThat(run.waitFor(90, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
            assertThat(bench.supply.heard()).doesNotContain("OUTP ON");
        }
        assertThat(Files.readString(folder.resolve("run.txt")))
                .contains("nobody is at the keyboard, and under power this run asks to switch the remote turn-on");
        assertThat(Found.in(session).state()).isEqualTo("stopped");
        assertThat(Found.in(session).json().get("events").toString()).contains("the input has ended");
    }

    /** Somebody who presses once more in fear changes nothing: the way to off is under way. */
    @Test
    void ctrlCTwiceDuringFirstPowerEndsOff() throws IOException, InterruptedException {
        Path session = folder.resolve("first-power.session");
        try (TableBench bench = new TableBench()) {
            Process run = started(bench, session);
            await("first power", () -> bench.unit.outputOn);
            signal("INT", run);
            Thread.sleep(100);
            signal("INT", run);

            assertThat(run.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
        }
        assertThat(Found.in(session).state()).isEqualTo("stopped");
    }

    @Test
    void ctrlCWhileTheBenchIsOpenedEndsWithoutPower() throws IOException, InterruptedException {
        Path session = folder.resolve("opening.session");
        try (TableBench bench = new TableBench()) {
            Process run = started(bench, session);
            await("the bench to be opened", () -> !bench.supply.heard().isEmpty());
            signal("INT", run);

            assertThat(run.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
            assertThat(bench.supply.heard()).noneMatch(message -> message.contains("OUTP ON"));
        }
        assertThat(Found.in(session).state()).isEqualTo("stopped");
    }

    @Test
    void aFrozenRunIsSwitchedOffAndTripsWhenItWakes() throws IOException, InterruptedException {
        Path session = folder.resolve("frozen.session");
        try (TableBench bench = new TableBench()) {
            Process run = started(bench, session);
            await("the load sweep", () -> bench.unit.amps("plus") == 4);
            signal("STOP", run);
            await("the guardian to switch off", () -> !bench.unit.outputOn);
            // the guardian counts from the last beat, the program from its last look: let both be over
            Thread.sleep(1000);
            int before = bench.supply.heard().size();
            signal("CONT", run);

            assertThat(run.waitFor(90, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
            List<String> after = bench.supply.heard();
            assertThat(after.subList(before, after.size()))
                    .anyMatch(message -> message.contains("OUTP OFF"))
                    .noneMatch(message -> message.matches(".*(OUTP ON|VOLT [0-9]|CURR [0-9]).*"));
        }
        Found found = Found.in(session);
        assertThat(found.state()).isEqualTo("tripped");
        assertThat(found.json().get("events").toString()).contains("the program stood still");
    }

    private static void signal(String name, Process process) throws IOException, InterruptedException {
        new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                .start()
                .waitFor();
    }

    private Process started(TableBench bench, Path session) throws IOException {
        Process run = new ProcessBuilder(command(bench, session))
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("run.txt").toFile())
                .start();
        runs.add(run);
        return run;
    }

    /** A run that did not end looks for its instruments for ever, and would take the next test's ports. */
    @AfterEach
    void noRunIsLeft() {
        runs.forEach(Process::destroyForcibly);
    }

    private List<String> command(TableBench bench, Path session) throws IOException {
        return List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "railwitness.logger.ui.command.Main",
                "run",
                "--design",
                "../sessions-sample/demo/design.toml",
                "--bench",
                bench.sheet(folder.resolve("bench.toml")).toString(),
                "--plan",
                Files.writeString(folder.resolve("plan.toml"), PLAN).toString(),
                "--out",
                session.toString(),
                "--acknowledge",
                "Ann Other");
    }

    private void await(String what, BooleanSupplier condition) throws InterruptedException, IOException {
        Instant limit = Instant.now().plus(Duration.ofSeconds(90));
        while (!condition.getAsBoolean()) {
            assertThat(Instant.now())
                    .as("waiting for " + what + ": " + Files.readString(folder.resolve("run.txt")))
                    .isBefore(limit);
            Thread.sleep(50);
        }
    }
}
