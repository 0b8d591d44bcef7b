package railwitness.logger.reporting.findings;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;

/** Sessions recorded on the virtual bench for tests. */
final class Rehearsed {
    private static final Instant START = Instant.parse("2026-05-11T08:00:00Z");

    private Rehearsed() {}

    static Path session(Path file, Sheets sheets, Specimen specimen) {
        return session(file, sheets, specimen, List.of(), 1);
    }

    /** @param seed draws the instruments' errors */
    static Path session(Path file, Sheets sheets, Specimen specimen, List<Fault> faults, long seed) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        VirtualBench bench = VirtualBench.of(specimen, faults, sheets.bench().content(), seed, scheduler::nowNanos);
        new LiveSession(
                        sheets,
                        scheduler,
                        bench.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new RehearsalPerson(scheduler, bench),
                        new RunListener() {})
                .run(file, head());
        return file;
    }

    private static SessionHead head() {
        return new SessionHead("0412", START, ZoneOffset.UTC, true, "test", "", "Saloon amplifier supply", "0412", "");
    }
}
