package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;

/** A writer that breaks off with every kind of trouble at every moment: told once, never sealed complete, never altered. */
class WriterFailuresTest {
    private static final Channel PLUS = Channel.of("plus.voltage");
    private static final int ENTRIES = 40;

    @TempDir
    Path folder;

    private final List<StoreException> troubles = new CopyOnWriteArrayList<>();

    private static Map<String, Supplier<Consumer<SessionWriter>>> kinds() {
        Map<String, Supplier<Consumer<SessionWriter>>> kinds = new LinkedHashMap<>();
        kinds.put("null", () -> failing(new NullPointerException()));
        kinds.put("state", () -> failing(new IllegalStateException("made for the test")));
        kinds.put("memory", () -> failing(new OutOfMemoryError("Java heap space")));
        kinds.put("stack", () -> failing(new StackOverflowError()));
        kinds.put("assertion", () -> failing(new AssertionError("made for the test")));
        kinds.put("linkage", () -> failing(new NoClassDefFoundError("railwitness/Nowhere")));
        kinds.put("half a step", () -> writer -> writer.add(halfAStep()));
        kinds.put("half a reading", () -> writer -> {
            writer.reading(new Missing(PLUS, "no answer", 1, 2));
            writer.reading(new Measured(null, 1, 1, 2));
        });
        kinds.put("store", () -> failing(new StoreException("made for the test")));
        return kinds;
    }

    private static Consumer<SessionWriter> failing(Throwable trouble) {
        return writer -> sneak(trouble);
    }

    @SuppressWarnings("unchecked")
    private static <T extends Throwable> void sneak(Throwable trouble) throws T {
        throw (T) trouble;
    }

    /** Its own row is written before its loads turn out not to be there. */
    private static Entry halfAStep() {
        TreeMap<String, Double> loads = new TreeMap<>();
        loads.put("plus", 1.0);
        StepEntry whole = new StepEntry(
                "no-load",
                "0 %",
                0,
                java.util.Optional.empty(),
                false,
                StepOutcome.STOPPED,
                "",
                java.util.OptionalDouble.empty(),
                loads);
        return new StepEntry(
                whole.stage(),
                whole.step(),
                whole.beginNanos(),
                whole.average(),
                false,
                whole.outcome(),
                "",
                whole.inputVolts(),
                null);
    }

    @Test
    void whateverBreaksAnEntryOffIsToldOnceAndTheSessionIsNotComplete() {
        int files = 0;
        for (Map.Entry<String, Supplier<Consumer<SessionWriter>>> kind : kinds().entrySet()) {
            for (int moment : new int[] {0, ENTRIES / 2, ENTRIES}) {
                for (boolean threaded : new boolean[] {true, false}) {
                    broken(
                            folder.resolve(files++ + ".session"),
                            kind.getKey(),
                            kind.getValue().get(),
                            moment,
                            threaded);
                }
            }
        }
        assertThat(files).isEqualTo(54);
    }

    private void broken(Path file, String kind, Consumer<SessionWriter> failing, int moment, boolean threaded) {
        String what = kind + " at entry " + moment + (threaded ? ", own thread" : ", at once");
        troubles.clear();
        SessionWriter writer = SessionWriter.create(file, Heads.plain());
        Recorder recorder =
                threaded ? Recorder.threaded(writer, 1000, troubles::add) : Recorder.inline(writer, troubles::add);
        for (int i = 0; i <= ENTRIES; i++) {
            if (i == moment) {
                recorder.offer(failing);
            }
            if (i == ENTRIES / 4) {
                recorder.offer(SessionWriter::commit);
            }
            recorder.reading(new Measured(PLUS, i, i * 1_000_000L, i * 1_000_000L + 1));
        }
        recorder.add(new EventEntry(ENTRIES * 1_000_000L, "off", "output off"));
        recorder.finish(SessionState.COMPLETE);
        assertThat(troubles).as(what).hasSize(1);
        assertThat(Verification.of(file).words()).as(what).startsWith("intact");
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.state()).as(what).isEqualTo(SessionState.TRIPPED);
            assertThat(session.events()).as(what).extracting(EventEntry::what).contains("off");
            if (!kind.equals("store")) {
                assertThat(session.events().get(session.events().size() - 1).text())
                        .as(what)
                        .startsWith("the record is not complete: up to ");
            }
        }
        assertThat(file.resolveSibling(file.getFileName() + "-held")).doesNotExist();
    }

    @Test
    void entriesThatFoundNoRoomAreCountedInTheSession() {
        Path file = folder.resolve("full.session");
        java.util.concurrent.CountDownLatch slow = new java.util.concurrent.CountDownLatch(1);
        Recorder recorder = Recorder.threaded(SessionWriter.create(file, Heads.plain()), 10, troubles::add);
        recorder.offer(writer -> {
            try {
                slow.await();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        });
        for (int i = 0; i < 100; i++) {
            recorder.reading(new Measured(PLUS, i, i, i));
        }
        slow.countDown();
        recorder.finish(SessionState.COMPLETE);
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.state()).isEqualTo(SessionState.TRIPPED);
            int kept = session.trace(PLUS, TimeSpan.ALL).count();
            assertThat(session.events().get(0).text()).contains("up to " + (100 - kept) + " entries");
        }
    }

    @Test
    void aRecorderThreadThatIsInterruptedGoesOnAndTells() throws Exception {
        Path file = folder.resolve("interrupted.session");
        Recorder recorder = Recorder.threaded(SessionWriter.create(file, Heads.plain()), 1000, troubles::add);
        recorder.offer(writer -> Thread.currentThread().interrupt());
        for (int i = 0; i < 200 && troubles.isEmpty(); i++) {
            Thread.sleep(20);
        }
        recorder.reading(new Measured(PLUS, 1, 1, 1));
        recorder.finish(SessionState.COMPLETE);
        assertThat(troubles).hasSize(1);
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.state()).isEqualTo(SessionState.TRIPPED);
            assertThat(session.trace(PLUS, TimeSpan.ALL).count()).isEqualTo(1);
        }
    }

    @Test
    void aListenerThatThrowsIsNoReasonToStopWriting() {
        Path file = folder.resolve("deaf.session");
        Recorder recorder = Recorder.inline(SessionWriter.create(file, Heads.plain()), trouble -> {
            throw new IllegalStateException("made for the test");
        });
        recorder.offer(failing(new IllegalStateException("first")));
        recorder.add(new EventEntry(1, "off", "output off"));
        recorder.finish(SessionState.STOPPED);
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.state()).isEqualTo(SessionState.STOPPED);
            assertThat(session.events()).extracting(EventEntry::what).contains("off", "recorder");
        }
    }
}
