package railwitness.logger.findings;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import railwitness.drivers.instrument.StationMaker;
import railwitness.drivers.rehearsal.Fault;
import railwitness.drivers.rehearsal.Specimen;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualAgenda;
import railwitness.logger.record.LiveSession;
import railwitness.logger.record.RehearsalPerson;
import railwitness.logger.record.RunListener;
import railwitness.logger.sheet.Sheets;
import railwitness.logger.store.Recorder;
import railwitness.logger.store.SessionHead;

/** Sessions recorded on the virtual bench for tests. */
final class Rehearsed {
    private static final Instant START = Instant.parse("2026-05-11T08:00:00Z");

    private Rehearsed() {}

    static Path session(Path file, Sheets sheets, Specimen specimen) {
        return session(file, sheets, specimen, List.of(), 1);
    }

    /** @param seed draws the instruments' errors */
    static Path session(Path file, Sheets sheets, Specimen specimen, List<Fault> faults, long seed) {
        VirtualAgenda agenda = new VirtualAgenda(START);
        VirtualBench bench = VirtualBench.of(specimen, faults, sheets.bench().content(), seed, agenda::nowNanos);
        new LiveSession(
                        sheets,
                        agenda,
                        bench.opener(agenda),
                        StationMaker.inline(agenda),
                        Recorder::inline,
                        new RehearsalPerson(agenda, bench),
                        new RunListener() {})
                .run(file, head());
        return file;
    }

    private static SessionHead head() {
        return new SessionHead("0412", START, ZoneOffset.UTC, true, "test", "", "Saloon amplifier supply", "0412", "");
    }
}
