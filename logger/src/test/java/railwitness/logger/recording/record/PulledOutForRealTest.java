package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.PeerTerminal;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.rehearsal.StandIn;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.rehearsal.PortsOnSheet;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.SessionFindings;

/** A meter's adapter is pulled out under power on real ports, another meter is put in its place, then the same one. */
@Timeout(value = 90, unit = TimeUnit.SECONDS)
class PulledOutForRealTest {
    private static final String METER = "plus meter";
    private static final String PLAN = """
            [plan]
            settle_at_most_s = 0
            average_s = 0.5
            [[stage]]
            kind = "power-up"
            current_limit_A = 5
            [[stage]]
            kind = "load-sweep"
            loads_pct = [50]
            """;

    @TempDir
    Path folder;

    private final RealScheduler scheduler = new RealScheduler();
    private final List<String> told = new ArrayList<>();
    private VirtualBench far;
    private PeerTerminal plugged;
    private boolean onMeanwhile;

    private void plug(VirtualBench bench) {
        try {
            plugged = new PeerTerminal(METER, bench.instrument(METER), "\n");
            Files.deleteIfExists(link());
            Files.createSymbolicLink(link(), Path.of(plugged.device()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Path link() {
        return folder.resolve("by-id-plus-meter");
    }

    /** Pulled out once the loaded step is averaged; a stranger for three seconds; then itself. */
    private void pullOut() {
        plugged.close();
        scheduler.after(
                Duration.ofMillis(1500),
                () -> plug(FixtureMaker.bench(Sheets.demo(), List.of(), 2, scheduler::nowNanos)));
        scheduler.after(Duration.ofMillis(3500), () -> {
            onMeanwhile = far.supply("supply").isOn();
            plugged.close();
            plug(far);
        });
    }

    @Test
    void theSameMeterBackInItsPlaceLetsTheSessionGoOn() {
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        Assumptions.assumeTrue(
                Boolean.getBoolean("railwitness.whole"),
                "takes half a minute of real time: -Drailwitness.whole=true; PulledOutTest does it on the virtual clock");
        far = FixtureMaker.bench(Sheets.demo(), List.of(), 1, scheduler::nowNanos);
        plug(far);
        Path file = folder.resolve("pulled.session");
        try (StandIn standIn = new StandIn(far, (name, on) -> {})) {
            Map<String, String> devices = new HashMap<>();
            standIn.places().forEach(place -> devices.put(place.name(), place.device()));
            devices.put(METER, link().toString());
            session(devices).run(file, StoppedSession.head());
        } finally {
            plugged.close();
        }
        SessionFindings findings = SessionFindings.of(file);
        assertThat(findings.state()).as(told::toString).isEqualTo(SessionState.COMPLETE);
        assertThat(onMeanwhile).isFalse();
        assertThat(far.supply("supply").isOn()).isFalse();
        assertThat(told)
                .anyMatch(words -> words.startsWith("paused: plus meter is away: put it back"))
                .anyMatch(
                        words -> words.matches("line: plus meter is there again after [3-5]\\.\\d s without readings"))
                .anyMatch(words -> words.startsWith("goes on"));
    }

    private LiveSession session(Map<String, String> devices) {
        Sheets sheets = new Sheets(
                Sheets.demo().design(),
                SheetText.of(
                        "bench",
                        Sheet.of(
                                "bench.toml", PortsOnSheet.changed(Sheets.demo().bench(), devices)),
                        BenchSheet::from),
                SheetText.of("plan", Sheet.of("plan.toml", PLAN), PlanReader::plan));
        return new LiveSession(
                sheets,
                scheduler,
                SerialLine::open,
                WorkerMaker.threaded(scheduler),
                (writer, trouble) -> Recorder.threaded(writer, 200_000, trouble),
                new RehearsalPerson(scheduler, far),
                new RunListener() {
                    @Override
                    public void happened(double atSeconds, SessionEvent event) {
                        told.add(event.what() + ": " + event.words());
                    }

                    @Override
                    public void averaging(Step step, boolean settled) {
                        told.add("averaging " + step.name());
                        if (told.stream()
                                        .filter(words -> words.startsWith("averaging"))
                                        .count()
                                == 1) {
                            pullOut();
                        }
                    }
                });
    }
}
