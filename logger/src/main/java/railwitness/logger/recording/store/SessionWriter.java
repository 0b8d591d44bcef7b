package railwitness.logger.recording.store;

import static railwitness.logger.recording.store.block.ReadingColumns.MEASURED;
import static railwitness.logger.recording.store.block.ReadingColumns.MISSING;
import static railwitness.logger.recording.store.block.ReadingColumns.OVERLOAD;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.reading.Waveform;
import railwitness.logger.recording.event.EventForm;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;

/**
 * Writes one session. What is added is on the disk at the latest a second (of the wall clock) later, provided that
 * something is added or {@link #tick} is called; it is then safe from a power cut. For one thread; {@link Recorder} puts
 * it on a thread of its own. All methods throw StoreException when the file can no longer be written.
 */
public final class SessionWriter implements AutoCloseable {
    private static final long COMMIT_NANOS = 1_000_000_000L;

    private final Path file;
    private final HeldFile held;
    private final ReserveFile reserve;
    private final SessionDatabase database;
    private final SessionLog log;
    private final DiskWatch disk;
    private final WallWatch walls;
    private Consumer<EventEntry> onWarning = event -> {};
    private long committedAt = System.nanoTime();
    private boolean closed;

    private SessionWriter(
            Path file, SessionHead head, HeldFile held, ReserveFile reserve, SessionDatabase database, DiskWatch disk) {
        this.file = file;
        this.held = held;
        this.reserve = reserve;
        this.database = database;
        this.disk = disk;
        this.log = new SessionLog(file, database, reserve);
        this.walls = new WallWatch(head.zone(), head.startedWall());
    }

    /**
     * Begins a session in a new file.
     *
     * @throws StoreException in one line when the file is already there or its folder is unknown or cannot be written
     */
    public static SessionWriter create(Path file, SessionHead head) {
        return create(file, head, () -> DiskWatch.freeBytesBeside(file));
    }

    static SessionWriter create(Path file, SessionHead head, LongSupplier freeBytes) {
        claim(file);
        Deque<AutoCloseable> taken = new ArrayDeque<>();
        try {
            HeldFile held = HeldFile.take(file);
            taken.push(held);
            ReserveFile reserve = ReserveFile.beside(file);
            taken.push(reserve);
            SessionDatabase database = SessionDatabase.create(file);
            taken.push(database);
            SessionWriter writer =
                    new SessionWriter(file, head, held, reserve, database, new DiskWatch(file, freeBytes));
            writer.log.row(RecordTable.SESSION, EntryCells.of(head));
            writer.commit();
            return writer;
        } catch (SQLException | IOException | RuntimeException e) {
            giveUp(file, taken);
            throw e instanceof StoreException known
                    ? known
                    : new StoreException("session file " + file + " cannot be begun: " + e.getMessage(), e);
        }
    }

    /**
     * Goes on with an interrupted session in its own file, the chain too.
     *
     * @param nowNanos where the session's axis goes on, ns; not before its last record
     * @throws StoreException in one line when the session has ended, is being recorded, or is not whole
     */
    public static SessionWriter goOn(Path file, long nowNanos, Instant wall) {
        Resumed resumed = Resumed.of(file);
        Deque<AutoCloseable> taken = new ArrayDeque<>();
        try {
            HeldFile held = HeldFile.take(file);
            taken.push(held);
            ReserveFile reserve = ReserveFile.beside(file);
            taken.push(reserve);
            SessionDatabase database = SessionDatabase.reopen(file);
            taken.push(database);
            SessionWriter writer = new SessionWriter(
                    file,
                    resumed.head(),
                    held,
                    reserve,
                    database,
                    new DiskWatch(file, () -> DiskWatch.freeBytesBeside(file)));
            writer.log.goOn(resumed);
            writer.walls.goOn(nowNanos, wall);
            return writer;
        } catch (SQLException | IOException | RuntimeException e) {
            closeAll(taken);
            throw e instanceof StoreException known
                    ? known
                    : new StoreException("session file " + file + " cannot be gone on with: " + e.getMessage(), e);
        }
    }

    private static void closeAll(Deque<AutoCloseable> taken) {
        for (AutoCloseable one : taken) {
            try {
                one.close();
            } catch (Exception e) {
                // the reason for giving up is told by the caller
            }
        }
    }

    private static void claim(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new StoreException("there is no folder " + folder + "; make it or choose another for the session");
        }
        try {
            Files.createFile(file);
        } catch (FileAlreadyExistsException e) {
            throw new StoreException(
                    HeldFile.isHeld(file)
                            ? "session file " + file
                                    + " is being recorded by another program right now; choose another file name"
                            : "session file " + file
                                    + " is already there and is never written over; choose another file name",
                    e);
        } catch (IOException e) {
            throw new StoreException("folder " + folder + " cannot be written; choose another for the session", e);
        }
    }

    /** Leaves nothing behind of a session that never began. */
    private static void giveUp(Path file, Deque<AutoCloseable> taken) {
        try {
            for (AutoCloseable one : taken) {
                one.close();
            }
            for (String tail : List.of("", "-wal", "-shm")) {
                Files.deleteIfExists(file.resolveSibling(file.getFileName() + tail));
            }
        } catch (Exception e) {
            // What cannot be cleared away stays; the reason for giving up is told by the caller.
        }
    }

    /** The file that is written. */
    public Path file() {
        return file;
    }

    /** Whom to tell of warnings (disk filling, clock set) as they are recorded. */
    public void onWarning(Consumer<EventEntry> listener) {
        onWarning = listener;
    }

    /** Adds an entry of any kind. */
    public void add(Entry entry) {
        checkOpen();
        if (entry instanceof SheetEntry sheet) {
            log.row(RecordTable.SHEET, EntryCells.of(sheet));
        } else if (entry instanceof InstrumentEntry instrument) {
            log.row(RecordTable.INSTRUMENT, EntryCells.of(instrument));
        } else if (entry instanceof StepEntry step) {
            long seq = log.row(RecordTable.STEP, EntryCells.of(step));
            step.loadAmps().forEach((rail, amps) -> log.row(RecordTable.STEP_LOAD, seq, rail, amps));
        } else if (entry instanceof EventEntry e) {
            event(e);
        } else if (entry instanceof ExchangeEntry x) {
            log.row(RecordTable.EXCHANGE, x.nanos(), x.instrument(), x.sent(), x.received(), x.trouble());
        } else if (entry instanceof WaveformEntry w) {
            log.waveform(w);
        } else if (entry instanceof NoteEntry n) {
            log.row(RecordTable.NOTE, n.nanos(), n.author(), n.text());
        }
        tick();
    }

    /** Keeps a sheet as it is written; kind is design, bench or plan. */
    public void sheet(String kind, String fileName, String text) {
        add(new SheetEntry(kind, fileName, text));
    }

    /** Keeps an instrument of the bench, as {@link InstrumentEntry}. */
    public void instrument(String name, String kind, String port, String dialect, Identity identity, String accuracy) {
        add(new InstrumentEntry(name, kind, port, dialect, identity, accuracy));
    }

    /** Keeps an event. */
    public void event(long nanos, SessionEvent event) {
        add(new EventEntry(nanos, event));
    }

    /** Keeps an event in the form of earlier sessions: a word and a sentence. */
    public void event(long nanos, String what, String text) {
        add(new EventEntry(nanos, what, text));
    }

    /** Keeps an exchange with an instrument, as {@link ExchangeEntry}. */
    public void exchange(long nanos, String instrument, String sent, String received, String trouble) {
        add(new ExchangeEntry(nanos, instrument, sent, received, trouble));
    }

    /** Keeps a waveform asked for at the given time, ns. */
    public void waveform(long nanos, Waveform waveform) {
        add(new WaveformEntry(nanos, waveform));
    }

    /** Keeps a person's remark. */
    public void note(long nanos, String author, String text) {
        add(new NoteEntry(nanos, author, text));
    }

    /** Keeps a step of the plan that has ended. */
    public void step(StepEntry step) {
        add(step);
    }

    /** Keeps a reading. */
    public void reading(Reading reading) {
        checkOpen();
        Channel channel = reading.channel();
        long requested = reading.requestedNanos();
        long replied = reading.repliedNanos();
        if (reading instanceof Measured measured) {
            log.reading(channel, requested, replied, MEASURED, Double.doubleToRawLongBits(measured.value()));
        } else if (reading instanceof Missing missing) {
            log.reading(channel, requested, replied, MISSING, log.reason(missing.reason()));
        } else {
            log.reading(channel, requested, replied, OVERLOAD, 0);
        }
        tick();
    }

    /**
     * Compares the wall clock with the session's axis, best once a second. A clock that was set, a change of summer time
     * and a computer that slept become events; the axis itself never jumps.
     */
    public void wall(long nanos, Instant wall) {
        checkOpen();
        WallWatch.Look look = walls.look(nanos, wall);
        if (look.anchors()) {
            log.row(RecordTable.ANCHOR, nanos, wall.toString());
        }
        look.events().forEach(this::warn);
    }

    private void event(EventEntry entry) {
        log.row(RecordTable.EVENT, entry.nanos(), entry.what(), EventForm.text(entry.event()));
    }

    private void warn(EventEntry event) {
        event(event);
        onWarning.accept(event);
    }

    /** Commits when a second has gone by since the last commit. */
    public void tick() {
        if (System.nanoTime() - committedAt >= COMMIT_NANOS || log.isLarge()) {
            commit();
        }
    }

    /**
     * Puts everything added so far safely on the disk, now.
     *
     * @throws StoreException when that failed, when it went into the last room of a full disk, or when the file is found
     *     moved or deleted; the next commit tries again
     */
    public void commit() {
        committedAt = System.nanoTime();
        disk.roomWarning(committedAt / 1e9)
                .ifPresent(text -> warn(new EventEntry(log.nowNanos(), new SessionEvent.Said(EventKind.DISK, text))));
        log.commit();
        if (disk.justLost()) {
            throw new StoreException("session file " + file + " was moved or deleted while it is being recorded;"
                    + " what is recorded will be saved as " + rescueFile() + " at the end of the run");
        }
    }

    /**
     * Brings the session to its end and leaves one plain file.
     *
     * @param state complete, stopped or tripped
     * @throws IllegalArgumentException for a state that is no ending
     */
    public void finish(SessionState state) {
        if (!state.isEnding()) {
            throw new IllegalArgumentException("a session ends complete, stopped or tripped, not " + state.word());
        }
        checkOpen();
        log.row(RecordTable.ENDING, log.nowNanos(), state.word());
        log.packRest();
        try {
            commitLast();
            fold();
        } finally {
            release();
        }
    }

    /** That the disk is full or the file gone was told before; now only what stays unwritten counts. */
    private void commitLast() {
        boolean known = disk.isLost();
        try {
            commit();
        } catch (StoreException e) {
            if (log.isPending() || known != disk.isLost()) {
                throw e;
            }
        }
    }

    private void fold() {
        try {
            if (disk.isLost()) {
                database.copyInto(rescueFile());
            } else {
                database.foldIn();
            }
        } catch (SQLException e) {
            throw new StoreException(
                    "session file " + file + " is whole, but its write-ahead log could not be folded in ("
                            + e.getMessage() + "); keep the files beside it together with it",
                    e);
        }
    }

    private Path rescueFile() {
        return file.resolveSibling("rescued-" + file.getFileName());
    }

    /** Leaves a session that was not finished: what was added is kept, and it reads as interrupted. */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        try {
            commitLast();
            if (disk.isLost()) {
                fold();
            }
        } finally {
            release();
        }
    }

    /**
     * Goes back to what is safe in the file, when an entry broke off half-way: what came since the last commit is given
     * up. Events and the ending can still be added behind it; readings and waveforms are counted only.
     */
    void fallBack() {
        if (!closed) {
            log.fallBack();
        }
    }

    /** How many records were given up. */
    long givenUp() {
        return log.givenUp();
    }

    /** Keeps, as an event, what the session lacks. */
    void lacks(String words) {
        event(new EventEntry(log.nowNanos(), new SessionEvent.Said(EventKind.RECORDER, words)));
    }

    private void checkOpen() {
        if (closed) {
            throw new StoreException("session file " + file + " is closed; nothing can be added");
        }
    }

    private void release() {
        closed = true;
        log.close();
        reserve.close();
        held.close();
    }
}
