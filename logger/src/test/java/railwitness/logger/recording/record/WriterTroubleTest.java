package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.findings.FindingsText;
import railwitness.logger.reporting.findings.SessionFindings;

/** A recorder that can no longer write, before power, under power and while switching off: off, told, not complete. */
class WriterTroubleTest {
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");

    @TempDir
    Path folder;

    private Recorder recorder;

    private static Consumer<SessionWriter> failing(String kind) {
        return switch (kind) {
            case "memory" ->
                writer -> {
                    throw new OutOfMemoryError("Java heap space");
                };
            case "stack" ->
                writer -> {
                    throw new StackOverflowError();
                };
            case "store" ->
                writer -> {
                    throw new StoreException("made for the test");
                };
            default ->
                writer -> {
                    throw new IllegalStateException("made for the test");
                };
        };
    }

    @ParameterizedTest
    @CsvSource({
        "state, 0",
        "state, 3",
        "state, 20",
        "state, 100",
        "memory, 0",
        "memory, 9",
        "memory, 60",
        "stack, 1",
        "stack, 30",
        "store, 0",
        "store, 12",
        "store, 90"
    })
    void theRunEndsSafelyAndTheSessionIsNotComplete(String kind, int atSeconds) {
        Path file = folder.resolve("a.session");
        VirtualScheduler scheduler = new VirtualScheduler(START);
        Sheets sheets = Sheets.demo();
        VirtualBench far = FixtureMaker.bench(sheets, List.of(), 1, scheduler::nowNanos);
        LiveSession session = new LiveSession(
                sheets,
                scheduler,
                far.opener(scheduler),
                WorkerMaker.inline(scheduler),
                (writer, trouble) -> recorder = Recorder.inline(writer, trouble),
                new RehearsalPerson(scheduler, far),
                new RunListener() {});
        scheduler.at(atSeconds * 1_000_000_000L, () -> recorder.offer(failing(kind)));
        SessionHead head = new SessionHead("trouble", START, ZoneOffset.UTC, true, "test", "", "unit", "", "");

        assertThatThrownBy(() -> session.run(file, head)).isInstanceOf(StoreException.class);

        assertThat(far.supply("supply").isOn()).isFalse();
        assertThat(Verification.of(file).words()).startsWith("intact");
        SessionFindings findings = SessionFindings.of(file);
        assertThat(findings.state()).isEqualTo(SessionState.TRIPPED);
        assertThat(findings.events()).extracting(event -> event.what()).contains("trip", "off");
        if (!kind.equals("store")) {
            assertThat(FindingsText.of(findings)).contains("recorder: the record is not complete");
        }
    }
}
