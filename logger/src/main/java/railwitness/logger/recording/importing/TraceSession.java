package railwitness.logger.recording.importing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Waveform;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.sheet.DesignReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;

/**
 * A scope's trace on its way into a session.
 *
 * @param rail whose ripple it shows; empty for the drain of a switch against ground
 * @param bandHz upper end of the band it was taken in, Hz, where stated; above zero
 * @param gainPct limit of the scope's gain error, percent, where stated; above zero
 */
public record TraceSession(Path trace, Optional<String> rail, OptionalDouble bandHz, OptionalDouble gainPct) {
    public TraceSession {
        rail.ifPresent(name -> new Channel(name, Quantity.RIPPLE));
        positive("band", "Hz", bandHz);
        positive("gain", "percent", gainPct);
    }

    private static void positive(String what, String unit, OptionalDouble value) {
        if (value.isPresent() && !(value.getAsDouble() > 0 && Double.isFinite(value.getAsDouble()))) {
            throw new ImportException(what + " " + value.getAsDouble() + " must be above zero, in " + unit);
        }
    }

    private Channel channel() {
        return rail.map(name -> new Channel(name, Quantity.RIPPLE)).orElse(new Channel("drain", Quantity.VOLTAGE));
    }

    private SessionEvent note() {
        return new SessionEvent.TraceTaken(channel(), trace.getFileName().toString(), bandHz, gainPct);
    }

    /**
     * Makes a session of the trace alone.
     *
     * @param out file to make
     * @param design sheet of the unit
     * @throws ImportException when the trace cannot be taken
     */
    public void alone(Path out, SessionHead head, Optional<SheetText<Design>> design) throws IOException {
        Waveform waveform = TraceImport.of(trace, channel());
        design.ifPresent(known -> checkRail(known.content()));
        write(out, head, SessionState.COMPLETE, writer -> {
            design.ifPresent(known -> writer.sheet(known.kind(), known.fileName(), known.text()));
            add(writer, 0, waveform);
        });
    }

    /**
     * Makes a session of all that a finished one holds, and the trace; the old one is not altered.
     *
     * @param out file to make
     * @param programVersion version of the program that makes it
     * @param progress told which share is copied, 0 to 1; what it throws ends the import
     * @throws ImportException when the trace cannot be taken, or that session has not ended
     */
    public void beside(Path session, Path out, String programVersion, DoubleConsumer progress) throws IOException {
        Waveform waveform = TraceImport.of(trace, channel());
        try (SessionFile old = SessionFile.open(session)) {
            if (!old.state().isEnding()) {
                throw new ImportException(
                        session + ": is " + old.state().word() + "; a trace is added to a finished session");
            }
            design(old).ifPresent(this::checkRail);
            SessionHead head = old.head();
            SessionHead copy = new SessionHead(
                    head.id() + "-traced",
                    head.startedWall(),
                    head.zone(),
                    head.rehearsal(),
                    programVersion,
                    head.acknowledgedBy(),
                    head.unitName(),
                    head.unitSerial(),
                    head.unitCondition());
            write(out, copy, old.state(), writer -> {
                SessionCopy.of(old, writer, progress);
                long last = old.lastNanos();
                writer.event(
                        last,
                        new SessionEvent.Said(
                                EventKind.COPY, "taken over from session " + head.id() + ", seal " + old.seal()));
                add(writer, last, waveform);
            });
        }
    }

    /** The design that a session was recorded with, where it has one. */
    public static Optional<Design> design(SessionFile session) {
        return session.sheet("design")
                .map(sheet -> Sheet.of(sheet.fileName(), sheet.text()).read(DesignReader::design));
    }

    private void checkRail(Design known) {
        if (rail.isPresent()
                && known.rails().stream().noneMatch(one -> one.name().equals(rail.get()))) {
            throw new ImportException("the design sheet has no rail '" + rail.get() + "'; its rails are "
                    + String.join(", ", known.rails().stream().map(Rail::name).toList()));
        }
    }

    private void add(SessionWriter writer, long nanos, Waveform waveform) {
        writer.event(nanos, note());
        writer.waveform(nanos, waveform);
    }

    private static void write(Path out, SessionHead head, SessionState state, Consumer<SessionWriter> content)
            throws IOException {
        SessionWriter writer = SessionWriter.create(out, head);
        try {
            content.accept(writer);
            writer.finish(state);
        } catch (RuntimeException e) {
            writer.close();
            Files.deleteIfExists(out);
            throw e;
        }
    }
}
