package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

class RecorderTest {
    private static final Channel PLUS = Channel.of("plus.voltage");

    @TempDir
    Path folder;

    private final List<StoreException> troubles = new CopyOnWriteArrayList<>();

    @Test
    void everythingHandedOverIsInTheFile() {
        Path file = folder.resolve("a.session");
        Recorder recorder = Recorder.threaded(SessionWriter.create(file, Heads.plain()), 10_000, troubles::add);
        for (int i = 0; i < 5000; i++) {
            recorder.reading(new Measured(PLUS, i, i, i));
        }
        recorder.add(new EventEntry(6000, "off", "done"));
        recorder.finish(SessionState.COMPLETE);
        assertThat(troubles).isEmpty();
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.trace(PLUS, TimeSpan.ALL).count()).isEqualTo(5000);
            assertThat(session.events()).hasSize(1);
        }
    }

    @Test
    void aFullQueueIsTroubleAndHoldsNobodyUp() throws Exception {
        Path file = folder.resolve("b.session");
        CountDownLatch slowDisk = new CountDownLatch(1);
        Recorder recorder = Recorder.threaded(SessionWriter.create(file, Heads.plain()), 10, troubles::add);
        recorder.offer(writer -> await(slowDisk));
        for (int i = 0; i < 100; i++) {
            recorder.reading(new Measured(PLUS, i, i, i));
        }
        assertThat(troubles).hasSize(1);
        assertThat(troubles.get(0)).hasMessageContaining("does not keep up");
        slowDisk.countDown();
        recorder.finish(SessionState.STOPPED);
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.state()).isEqualTo(SessionState.STOPPED);
            assertThat(session.trace(PLUS, TimeSpan.ALL).count()).isBetween(9, 11);
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void inARehearsalTheCallersThreadWrites() {
        Path file = folder.resolve("c.session");
        Recorder recorder = Recorder.inline(SessionWriter.create(file, Heads.plain()), troubles::add);
        Thread caller = Thread.currentThread();
        recorder.offer(writer -> assertThat(Thread.currentThread()).isSameAs(caller));
        recorder.finish(SessionState.COMPLETE);
        assertThat(file).exists();
    }

    @Test
    void troubleOfTheWriterIsToldOnce() throws Exception {
        Path file = folder.resolve("d.session");
        Recorder recorder = Recorder.inline(SessionWriter.create(file, Heads.plain()), troubles::add);
        recorder.reading(new Measured(PLUS, 1, 1, 1));
        java.nio.file.Files.delete(file);
        recorder.offer(SessionWriter::commit);
        recorder.offer(SessionWriter::commit);
        recorder.finish(SessionState.STOPPED);
        assertThat(troubles).hasSize(1);
        assertThat(Verification.of(folder.resolve("rescued-d.session")).isIntact())
                .isTrue();
    }

    @Test
    void aWriterThatIsClosedUnfinishedReadsAsInterrupted() {
        Path file = folder.resolve("e.session");
        Recorder recorder = Recorder.threaded(SessionWriter.create(file, Heads.plain()), 10, troubles::add);
        recorder.reading(new Measured(PLUS, 1, 1, 1));
        recorder.close();
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.state()).isEqualTo(SessionState.INTERRUPTED);
            assertThat(session.trace(PLUS, TimeSpan.ALL).count()).isEqualTo(1);
        }
    }
}
