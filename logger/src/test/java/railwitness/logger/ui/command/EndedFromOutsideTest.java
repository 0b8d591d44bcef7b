package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railwitness.logger.fixture.ProgramProcess;
import railwitness.logger.fixture.ShortPlan;

/**
 * A run in a process of its own, on real ports, that is killed or interrupted while the output is on. It waits more than it
 * works, so it goes on beside other tests.
 */
@Execution(ExecutionMode.CONCURRENT)
class EndedFromOutsideTest {
    private static final String PLAN =
            ShortPlan.of(0.4, "standby", "power-up", "no-load", "load-sweep", "hold; duration_s = 600");

    @TempDir
    Path folder;

    @Test
    void aKilledRunIsSwitchedOffAndLeavesAReadableSession() throws IOException, InterruptedException {
        Path session = folder.resolve("killed.session");
        try (TableBench bench = new TableBench()) {
            ProgramProcess run = started(bench, session);
            run.await("the load sweep", () -> bench.unit.amps("plus") == 4);
            run.awaitSteps(3, session);
            run.kill();

            run.await("the guardian to switch off", () -> !bench.unit.outputOn);
        }
        Said said = Said.by("findings", session.toString());
        assertThat(said.exitCode()).isZero();
        assertThat(said.out()).contains("interrupted").contains("load-sweep  25 %");
        assertThat(Found.in(session).state()).isEqualTo("interrupted");
    }

    /** The serial library would have a closed terminal ignored. */
    @ParameterizedTest
    @CsvSource({"INT,(Ctrl-C)", "TERM,(TERM)", "HUP,(HUP)"})
    void eachSignalIsOneStopUnderItsOwnName(String signal, String name) throws IOException, InterruptedException {
        Path session = folder.resolve("stopped.session");
        try (TableBench bench = new TableBench()) {
            ProgramProcess run = started(bench, session);
            run.await("the load sweep", () -> bench.unit.amps("plus") == 4);
            run.signal(signal);

            assertThat(run.process().waitFor(60, TimeUnit.SECONDS)).isTrue();
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
            ProgramProcess run = started(bench, session);
            run.await("the load sweep", () -> bench.unit.amps("plus") == 4);
            run.process().getOutputStream().close();

            assertThat(run.process().waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
        }
        assertThat(Found.in(session).state()).isEqualTo("stopped");
        assertThat(Found.in(session).json().get("events").toString()).contains("the input has ended");
    }

    /** Somebody who presses once more in fear changes nothing: the way to off is under way. */
    @Test
    void ctrlCTwiceDuringFirstPowerEndsOff() throws IOException, InterruptedException {
        Path session = folder.resolve("first-power.session");
        try (TableBench bench = new TableBench()) {
            ProgramProcess run = started(bench, session);
            run.await("first power", () -> bench.unit.outputOn);
            run.signal("INT");
            Thread.sleep(100);
            run.signal("INT");

            assertThat(run.process().waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
        }
        assertThat(Found.in(session).state()).isEqualTo("stopped");
    }

    @Test
    void ctrlCWhileTheBenchIsOpenedEndsWithoutPower() throws IOException, InterruptedException {
        Path session = folder.resolve("opening.session");
        try (TableBench bench = new TableBench()) {
            ProgramProcess run = started(bench, session);
            run.await("the bench to be opened", () -> !bench.supply.heard().isEmpty());
            run.signal("INT");

            assertThat(run.process().waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(bench.unit.outputOn).isFalse();
            assertThat(bench.supply.heard()).noneMatch(message -> message.contains("OUTP ON"));
        }
        assertThat(Found.in(session).state()).isEqualTo("stopped");
    }

    @Test
    void aFrozenRunIsSwitchedOffAndTripsWhenItWakes() throws IOException, InterruptedException {
        Path session = folder.resolve("frozen.session");
        try (TableBench bench = new TableBench()) {
            ProgramProcess run = started(bench, session);
            run.await("the load sweep", () -> bench.unit.amps("plus") == 4);
            run.signal("STOP");
            run.await("the guardian to switch off", () -> !bench.unit.outputOn);
            // the guardian counts from the last beat, the program from its last look: let both be over
            Thread.sleep(1000);
            int before = bench.supply.heard().size();
            run.signal("CONT");

            assertThat(run.process().waitFor(90, TimeUnit.SECONDS)).isTrue();
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

    private ProgramProcess started(TableBench bench, Path session) throws IOException {
        return ProgramProcess.started(
                folder.resolve("run.txt"),
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
}
