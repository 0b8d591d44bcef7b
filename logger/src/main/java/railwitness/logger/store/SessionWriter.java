package railwitness.logger.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.reading.Waveform;
import railwitness.logger.store.chain.Chain;

/**
 * Writes one session. What is added is on the disk at the latest a second (of the wall clock) later, provided that
 * something is added or {@link #tick} is called; it is then safe from a power cut. For one thread; {@link Recorder} puts
 * it on a thread of its own. All methods throw StoreException when the file can no longer be written.
 */
public final class SessionWriter implements AutoCloseable {
    private static final long COMMIT_NANOS = 1_000_000_000L;
    private static final long SECOND_NANOS = 1_000_000_000L;

    private final Path file;
    private final HeldFile held;
    private final SessionDatabase database;
    private final Chain chain = new Chain();
    private final Map<Channel, HotChannel> channels = new LinkedHashMap<>();
    private final Map<String, Long> reasons = new HashMap<>();
    private final List<RecordRow> pendingRows = new ArrayList<>();
    private final List<LinkRow> pendingLinks = new ArrayList<>();
    private boolean readingsPending;
    private long lastSeq;
    private long nowNanos;
    private long committedAt = System.nanoTime();
    private boolean closed;

    private SessionWriter(Path file, HeldFile held, SessionDatabase database) {
        this.file = file;
        this.held = held;
        this.database = database;
    }

    /**
     * Begins a session in a new file.
     *
     * @throws StoreException in one line when the file is already there or its folder is unknown or cannot be written
     */
    public static SessionWriter create(Path file, SessionHead head) {
        claim(file);
        HeldFile held = null;
        try {
            held = HeldFile.take(file);
            SessionWriter writer = new SessionWriter(file, held, SessionDatabase.create(file));
            writer.row(RecordTable.SESSION, EntryCells.of(head));
            writer.commit();
            return writer;
        } catch (SQLException | RuntimeException e) {
            if (held != null) {
                held.close();
            }
            throw e instanceof StoreException known
                    ? known
                    : new StoreException("session file " + file + " cannot be begun: " + e.getMessage(), e);
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

    /** The file that is written. */
    public Path file() {
        return file;
    }

    /** Adds an entry of any kind. */
    public void add(Entry entry) {
        if (entry instanceof SheetEntry sheet) {
            row(RecordTable.SHEET, EntryCells.of(sheet));
        } else if (entry instanceof InstrumentEntry instrument) {
            row(RecordTable.INSTRUMENT, EntryCells.of(instrument));
        } else if (entry instanceof StepEntry step) {
            step(step);
        } else if (entry instanceof EventEntry e) {
            row(RecordTable.EVENT, e.nanos(), e.what(), e.text());
        } else if (entry instanceof ExchangeEntry x) {
            row(RecordTable.EXCHANGE, x.nanos(), x.instrument(), x.sent(), x.received(), x.trouble());
        } else if (entry instanceof WaveformEntry w) {
            row(RecordTable.WAVEFORM, EntryCells.of(w, hot(w.waveform().channel()).id));
        } else if (entry instanceof NoteEntry n) {
            row(RecordTable.NOTE, n.nanos(), n.author(), n.text());
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

    /** Keeps an event, as {@link EventEntry}. */
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
        long seq = row(RecordTable.STEP, EntryCells.of(step));
        step.loadAmps().forEach((rail, amps) -> row(RecordTable.STEP_LOAD, seq, rail, amps));
    }

    /** Keeps a reading. */
    public void reading(Reading reading) {
        if (reading instanceof Measured measured) {
            reading(measured, 1, Double.doubleToRawLongBits(measured.value()));
        } else if (reading instanceof Missing missing) {
            reading(missing, 3, reason(missing.reason()));
        } else {
            reading(reading, 2, 0);
        }
    }

    private void reading(Reading reading, int kind, long payload) {
        HotChannel hot = hot(reading.channel());
        long requested = reading.requestedNanos();
        long replied = reading.repliedNanos();
        moveOn(replied);
        hot.add(++lastSeq, requested, replied, kind, payload);
        chain.reading(kind, hot.id, requested, replied, payload);
        readingsPending = true;
        tick();
    }

    private HotChannel hot(Channel channel) {
        HotChannel hot = channels.get(channel);
        if (hot == null) {
            long seq = row(
                    RecordTable.CHANNEL, channel.toString(), channel.quantity().unit());
            hot = new HotChannel(channel, Math.toIntExact(seq));
            channels.put(channel, hot);
        }
        return hot;
    }

    private long reason(String text) {
        Long known = reasons.get(text);
        if (known == null) {
            known = row(RecordTable.REASON, text);
            reasons.put(text, known);
        }
        return known;
    }

    private long row(RecordTable table, Object... cells) {
        if (closed) {
            throw new StoreException("session file " + file + " is closed; nothing can be added");
        }
        if (table.hasTime()) {
            moveOn((Long) cells[0]);
        }
        long seq = ++lastSeq;
        chain.row(table.tag(), seq, cells);
        pendingRows.add(new RecordRow(table, seq, cells));
        return seq;
    }

    /** A record of a new second ends the link of the seconds before it. */
    private void moveOn(long nanos) {
        if (nanos > nowNanos) {
            if (nanos / SECOND_NANOS > nowNanos / SECOND_NANOS) {
                link();
            }
            nowNanos = nanos;
        }
    }

    private void link() {
        if (!chain.isEmpty()) {
            pendingLinks.add(new LinkRow(lastSeq, nowNanos, chain.link(nowNanos)));
        }
    }

    /** Commits when a second has gone by since the last commit. */
    public void tick() {
        if (System.nanoTime() - committedAt >= COMMIT_NANOS) {
            commit();
        }
    }

    /** Puts everything added so far safely on the disk, now. */
    public void commit() {
        committedAt = System.nanoTime();
        link();
        if (pendingLinks.isEmpty()) {
            return;
        }
        try {
            database.commit(pendingRows, channels.values(), pendingLinks);
        } catch (SQLException e) {
            database.rollBack();
            throw new StoreException("session file " + file + " cannot be written: " + e.getMessage(), e);
        }
        pendingRows.clear();
        pendingLinks.clear();
        channels.values().forEach(hot -> hot.committed = hot.size);
        readingsPending = false;
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
        row(RecordTable.ENDING, nowNanos, state.word());
        commit();
        try {
            database.foldIn();
        } catch (SQLException e) {
            throw new StoreException(
                    "session file " + file + " is whole, but its write-ahead log could not be folded in ("
                            + e.getMessage() + "); keep the files beside it",
                    e);
        } finally {
            release();
        }
    }

    /** Leaves a session that was not finished: what was added is kept, and it reads as interrupted. */
    @Override
    public void close() {
        if (!closed) {
            try {
                commit();
            } finally {
                release();
            }
        }
    }

    private void release() {
        closed = true;
        database.close();
        held.close();
    }
}
