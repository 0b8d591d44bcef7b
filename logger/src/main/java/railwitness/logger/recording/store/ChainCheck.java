package railwitness.logger.recording.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleConsumer;
import railwitness.logger.recording.store.chain.HashChain;

/** Puts all records into recording order again and works the chain out, link after link. */
final class ChainCheck {
    private static final long SECOND_NANOS = 1_000_000_000L;

    private final List<RecordSource> sources;
    private final FaultList faults;
    private final long[] heads;
    private final HashChain chain = new HashChain();
    private final Set<String> inLink = new TreeSet<>();
    private RecordSource lastSource;
    private long nextSeq = 1;
    private long nowNanos;
    private long links;
    private byte[] seal = new byte[0];

    ChainCheck(List<RecordSource> sources, FaultList faults) {
        this.sources = sources;
        this.faults = faults;
        this.heads = new long[sources.size()];
        for (int i = 0; i < heads.length; i++) {
            heads[i] = sources.get(i).seq();
        }
    }

    void run(Connection connection, DoubleConsumer progress) throws SQLException {
        long all = lastLink(connection);
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT last_seq, at_ns, digest FROM link ORDER BY last_seq")) {
            while (rows.next()) {
                progress.accept(Math.max(0, Math.min(1, (double) nextSeq / all)));
                check(rows.getLong(1), rows.getObject(2), rows.getBytes(3));
            }
        }
        if (next() >= 0) {
            faults.addFrom(nowNanos / SECOND_NANOS, "records stand behind the last digest");
        }
    }

    private static long lastLink(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT max(last_seq) FROM link")) {
            return Math.max(1, row.next() ? row.getLong(1) : 1);
        }
    }

    private void check(long lastSeq, Object atNanos, byte[] digest) throws SQLException {
        inLink.clear();
        lastSource = null;
        feedUpTo(lastSeq);
        byte[] again = chain.link(nowNanos);
        boolean timeAgrees = atNanos instanceof Number at && !(at instanceof Double) && at.longValue() == nowNanos;
        if (!timeAgrees || !Arrays.equals(again, digest)) {
            faults.addFrom(
                    nowNanos / SECOND_NANOS,
                    "second " + nowNanos / SECOND_NANOS + " is not as it was recorded (" + String.join(", ", inLink)
                            + ")");
        }
        chain.goOnFrom(digest == null ? new byte[32] : digest);
        seal = digest == null ? seal : digest;
        links++;
    }

    private void feedUpTo(long lastSeq) throws SQLException {
        while (nextSeq <= lastSeq) {
            int i = next();
            if (i < 0 || heads[i] > lastSeq) {
                missing(lastSeq + 1);
                return;
            }
            if (heads[i] > nextSeq) {
                missing(heads[i]);
            }
            feed(i);
        }
    }

    private void feed(int i) throws SQLException {
        RecordSource source = sources.get(i);
        if (heads[i] < nextSeq) {
            faults.addFrom(nowNanos / SECOND_NANOS, "record " + heads[i] + " is there twice or out of its place");
        }
        nextSeq = heads[i] + 1;
        source.feed(chain);
        heads[i] = source.seq();
        nowNanos = Math.max(nowNanos, source.nanos());
        if (source != lastSource) {
            lastSource = source;
            inLink.add(source.words());
        }
    }

    private void missing(long foundSeq) {
        faults.addFrom(
                nowNanos / SECOND_NANOS,
                "records " + nextSeq + " to " + (foundSeq - 1) + " are missing behind second "
                        + nowNanos / SECOND_NANOS);
        nextSeq = foundSeq;
    }

    /** The source whose record comes next; -1 only where no source has any left. */
    private int next() {
        int best = -1;
        long least = Long.MAX_VALUE;
        for (int i = 0; i < heads.length; i++) {
            if (heads[i] == nextSeq) {
                return i;
            }
            if (heads[i] < least) {
                least = heads[i];
                best = i;
            }
        }
        return best;
    }

    long links() {
        return links;
    }

    String seal() {
        return HexFormat.of().formatHex(seal);
    }
}
