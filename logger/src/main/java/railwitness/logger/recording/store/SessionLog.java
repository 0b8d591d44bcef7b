package railwitness.logger.recording.store;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.block.BlockCodec;
import railwitness.logger.recording.store.chain.HashChain;

/**
 * The order of recording: numbers every record, feeds it to the chain, and gathers what the next commit writes. Nothing
 * reaches the file between two commits, so a commit that failed can be tried again whole.
 */
final class SessionLog implements AutoCloseable {
    private static final long SECOND_NANOS = 1_000_000_000L;
    /** In one commit in so many of the minutes that wait are packed, so that no commit takes long. */
    private static final int MINUTES_SHARE = 8;

    private final Path file;
    private final SessionDatabase database;
    private final ReserveFile reserve;
    private HashChain chain = new HashChain();
    private final BlockCodec codec = new BlockCodec();
    private final Map<Channel, HotChannel> channels = new LinkedHashMap<>();
    private final Map<String, Long> reasons = new HashMap<>();
    private final Batch batch = new Batch();
    private long lastSeq;
    private long nowNanos;
    private boolean broken;
    private boolean torn;
    private boolean fellBack;
    private long givenUp;
    private long safeSeq;
    private long safeNanos;
    private byte[] safeDigest = new byte[32];

    SessionLog(Path file, SessionDatabase database, ReserveFile reserve) {
        this.file = file;
        this.database = database;
        this.reserve = reserve;
    }

    /** Goes on behind what an interrupted session holds. */
    void goOn(Resumed resumed) {
        lastSeq = resumed.lastSeq();
        safeSeq = lastSeq;
        nowNanos = resumed.lastNanos();
        safeNanos = nowNanos;
        safeDigest = resumed.digest().clone();
        chain.goOnFrom(safeDigest);
        reasons.putAll(resumed.reasons());
        resumed.channels().forEach((channel, id) -> channels.put(channel, new HotChannel(id)));
        for (Resumed.Plain one : resumed.plain()) {
            channels.get(one.channel())
                    .add(one.seq(), one.requestedNanos(), one.repliedNanos(), one.kind(), one.payload());
        }
        for (HotChannel hot : channels.values()) {
            hot.unpacked().forEach(Minute::markCommitted);
        }
    }

    /** Latest time of any record, ns. */
    long nowNanos() {
        return nowNanos;
    }

    /** Adds a row and returns its number. */
    long row(RecordTable table, Object... cells) {
        checkNotTorn();
        if (broken) {
            throw new StoreException("session file " + file + " can no longer be written; nothing can be added");
        }
        if (table.hasTime()) {
            moveOn((Long) cells[0]);
        }
        long seq = ++lastSeq;
        chain.row(table.tag(), seq, cells);
        batch.rows.add(new RecordRow(table, seq, cells));
        return seq;
    }

    void reading(Channel channel, long requestedNanos, long repliedNanos, int kind, long payload) {
        if (fellBack) {
            givenUp++;
            return;
        }
        checkNotTorn();
        HotChannel hot = hot(channel);
        moveOn(repliedNanos);
        chain.reading(kind, hot.id(), requestedNanos, repliedNanos, payload);
        if (hot.add(++lastSeq, requestedNanos, repliedNanos, kind, payload) && hot.packsAtOnce()) {
            packAll(hot);
        }
    }

    void waveform(WaveformEntry entry) {
        if (fellBack) {
            givenUp++;
        } else {
            row(
                    RecordTable.WAVEFORM,
                    EntryCells.of(entry, hot(entry.waveform().channel()).id()));
        }
    }

    private HotChannel hot(Channel channel) {
        HotChannel hot = channels.get(channel);
        if (hot == null) {
            long seq = row(
                    RecordTable.CHANNEL, channel.toString(), channel.quantity().unit());
            hot = new HotChannel(Math.toIntExact(seq));
            channels.put(channel, hot);
        }
        return hot;
    }

    /** Number of the reason's record, made when it is new. */
    long reason(String text) {
        Long known = reasons.get(text);
        if (known == null) {
            known = row(RecordTable.REASON, text);
            reasons.put(text, known);
        }
        return known;
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
            batch.links.add(new LinkRow(lastSeq, nowNanos, chain.link(nowNanos)));
        }
    }

    private void packAll(HotChannel hot) {
        while (hot.waiting() > 0) {
            packOldest(hot);
        }
    }

    private void packOldest(HotChannel hot) {
        Minute minute = hot.takeOldest();
        batch.add(BlockRow.of(hot.id(), minute, codec));
        hot.reuse(minute);
    }

    private void packSome() {
        int waiting = 0;
        for (HotChannel hot : channels.values()) {
            waiting += hot.waiting();
        }
        int share = (waiting + MINUTES_SHARE - 1) / MINUTES_SHARE;
        for (HotChannel hot : channels.values()) {
            while (share > 0 && hot.waiting() > 0) {
                packOldest(hot);
                share--;
            }
        }
    }

    /** Packs everything, the running minutes too; the next commit leaves no plain row behind. */
    void packRest() {
        for (HotChannel hot : channels.values()) {
            hot.endMinute();
            packAll(hot);
        }
    }

    /** True when something is not in the file yet. */
    boolean isPending() {
        return !batch.isEmpty();
    }

    /** True when so much waits that a commit is due whatever the clock says. */
    boolean isLarge() {
        return batch.isLarge();
    }

    /** Writes everything that waits; throws StoreException when it stays unwritten or the disk is now full. */
    void commit() {
        checkNotTorn();
        packSome();
        link();
        if (batch.isEmpty()) {
            return;
        }
        try {
            write();
        } catch (SQLException e) {
            if (Sqlite.isFull(e) && reserve.giveBack()) {
                writeIntoReserve();
            }
            throw failure(e);
        }
    }

    private void write() throws SQLException {
        try {
            database.commit(batch, channels.values());
        } catch (SQLException e) {
            database.rollBack();
            throw e;
        }
        safeSeq = lastSeq;
        safeNanos = nowNanos;
        if (!batch.links.isEmpty()) {
            safeDigest = batch.links.get(batch.links.size() - 1).digest();
        }
        batch.clear();
        for (HotChannel hot : channels.values()) {
            hot.unpacked().forEach(Minute::markCommitted);
        }
    }

    /**
     * Forgets all that is not safe in the file: after a mistake nobody knows whether numbers, chain and rows still agree.
     * Rows may be added again, behind what is safe; readings and waveforms are counted only.
     */
    void fallBack() {
        torn = true;
        database.rollBack();
        HashChain anew = new HashChain();
        anew.goOnFrom(safeDigest);
        givenUp += lastSeq - safeSeq;
        batch.clear();
        channels.clear();
        reasons.clear();
        chain = anew;
        lastSeq = safeSeq;
        nowNanos = safeNanos;
        fellBack = true;
        torn = false;
        broken = false;
    }

    /** How many records were given up. */
    long givenUp() {
        return givenUp;
    }

    private void checkNotTorn() {
        if (torn) {
            throw new StoreException("session file " + file
                    + " can no longer be written after a mistake in the program;" + " what was safe in it stays so");
        }
    }

    private void writeIntoReserve() {
        try {
            write();
        } catch (SQLException e) {
            throw failure(e);
        }
        throw new StoreException("the disk is full; everything recorded so far is safe in " + file
                + ", in the room set aside for that; end the run and make room");
    }

    private StoreException failure(SQLException e) {
        broken = batch.isLarge();
        return new StoreException(
                Sqlite.isFull(e)
                        ? "the disk is full; " + file + " holds all but the readings since the last second; make room"
                        : "session file " + file + " cannot be written (" + e.getMessage()
                                + "); end the run and look at the disk",
                e);
    }

    @Override
    public void close() {
        codec.close();
        database.close();
    }
}
