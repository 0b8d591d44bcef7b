package railwitness.logger.certificate;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import railwitness.drivers.instrument.StationMaker;
import railwitness.drivers.rehearsal.Fault;
import railwitness.drivers.rehearsal.Specimen;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualAgenda;
import railwitness.logger.record.LiveSession;
import railwitness.logger.record.RehearsalPerson;
import railwitness.logger.record.RunListener;
import railwitness.logger.rehearsal.FixtureMaker;
import railwitness.logger.sheet.Sheets;
import railwitness.logger.store.Recorder;
import railwitness.logger.store.SessionHead;

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
        VirtualAgenda agenda = new VirtualAgenda(START);
        VirtualBench bench = FixtureMaker.bench(sheets, specimen, seed, agenda::nowNanos);
        new LiveSession(
                        sheets,
                        agenda,
                        bench.opener(agenda),
                        StationMaker.inline(agenda),
                        Recorder::inline,
                        new RehearsalPerson(agenda, bench),
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
