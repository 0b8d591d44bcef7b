package railwitness.logger.reporting.certificate;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;

/** Sessions of the demo's sheets on the virtual bench, the same every time. */
final class Rehearsed {
    static final Instant START = Instant.parse("2026-03-28T09:30:00Z");

    private static final RunListener SILENT = new RunListener() {};

    private Rehearsed() {}

    /** @param fault code of a fault, or empty text for a sound unit */
    static Path session(Path file, String fault, long seed, SessionHead head) {
        Sheets sheets = Sheets.demo();
        Specimen sound = FixtureMaker.specimen(sheets);
        Specimen specimen = fault.isEmpty() ? sound : Fault.of(fault).in(sound);
        VirtualScheduler scheduler = new VirtualScheduler(START);
        VirtualBench bench = FixtureMaker.bench(sheets, specimen, seed, scheduler::nowNanos);
        new LiveSession(
                        sheets,
                        scheduler,
                        bench.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new RehearsalPerson(scheduler, bench),
                        SILENT)
                .run(file, head);
        return file;
    }

    static SessionHead head(String id, boolean rehearsal) {
        return head(id, rehearsal, "Saloon amplifier supply", "0412");
    }

    static SessionHead head(String id, boolean rehearsal, String unit, String serial) {
        return new SessionHead(
                id, START, ZoneId.of("Europe/Berlin"), rehearsal, "0.1.0", "the lock keeper", unit, serial, "as left");
    }
}
