package railwitness.logger.recording.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.store.block.ReadingColumns;

/**
 * A session read back: from a plain file in a read-only place, from an interrupted one, or while a recorder writes it,
 * which it never holds up. Nothing here changes the file, and nothing holds a session in memory. Several threads may
 * call it but wait for each other; one that must not wait opens the file for itself. All methods throw StoreException when the file cannot be read.
 */
public final class SessionFile implements AutoCloseable {
    private final Path file;
    private final Connection connection;
    private final WorkBound bound;
    private final RecordReader records;
    private final ReadingReader readings;
    private final SummaryReader summaries;

    private int depth;

    private SessionFile(Path file, OpenedFile opened) throws SQLException {
        this.file = file;
        this.connection = opened.connection();
        this.bound = opened.bound();
        this.records = new RecordReader(connection);
        this.readings = new ReadingReader(connection);
        this.summaries = new SummaryReader(connection, readings);
    }

    /**
     * Opens a session.
     *
     * @throws StoreException in one line when it is missing, cut short, another program's, or of a newer version
     */
    public static SessionFile open(Path file) {
        OpenedFile opened = OpenedFile.open(file);
        try {
            return new SessionFile(file, opened);
        } catch (SQLException e) {
            Sqlite.closeQuietly(opened.connection());
            throw OpenedFile.damaged(file, e);
        }
    }

    public Path file() {
        return file;
    }

    public SessionHead head() {
        return read(() -> records.head())
                .orElseThrow(() -> new StoreException(
                        "session file " + file + " holds no session: its recorder died in its first moment"));
    }

    /** How far it came; asked anew each time. */
    public SessionState state() {
        Optional<SessionEnd> ending = ending();
        if (ending.isPresent()) {
            return ending.get().state();
        }
        return HeldFile.isHeld(file) ? SessionState.RUNNING : SessionState.INTERRUPTED;
    }

    /** The end, unless it is still running or was interrupted. */
    public Optional<SessionEnd> ending() {
        return read(() -> records.endings()).stream().findFirst();
    }

    /** Time of the last record that has one, ns; zero when there is none. */
    public long lastNanos() {
        return read(records::lastNanos);
    }

    /** Digest of the whole chain so far, as 64 hexadecimal digits: the seal that a certificate carries. */
    public String seal() {
        return read(records::seal);
    }

    public List<SheetEntry> sheets() {
        return read(records::sheets);
    }

    /** The sheet of that kind; the last one when it was kept more than once. */
    public Optional<SheetEntry> sheet(String kind) {
        return sheets().stream().filter(s -> s.kind().equals(kind)).reduce((a, b) -> b);
    }

    public List<InstrumentEntry> instruments() {
        return read(records::instruments);
    }

    /** The steps of the plan in the order in which they ended. */
    public List<StepEntry> steps() {
        return read(records::steps);
    }

    public List<EventEntry> events() {
        return read(records::events);
    }

    public List<ExchangeEntry> exchanges() {
        return read(records::exchanges);
    }

    /** The exchanges one after the other, in recording order. */
    public void exchanges(Consumer<ExchangeEntry> sink) {
        read(() -> {
            records.exchanges(sink);
            return null;
        });
    }

    /** The waveforms one after the other, in recording order. */
    public void waveforms(Consumer<WaveformEntry> sink) {
        read(() -> {
            records.waveforms(sink);
            return null;
        });
    }

    public List<WaveformEntry> waveforms() {
        return read(records::waveforms);
    }

    public List<NoteEntry> notes() {
        return read(records::notes);
    }

    /** Where axis and wall clock met, the start first. */
    public List<Anchor> anchors() {
        List<Anchor> all = new ArrayList<>();
        all.add(new Anchor(0, head().startedWall()));
        all.addAll(read(records::anchors));
        return all;
    }

    /** The wall clock's time of an instant of the axis, by the last anchor before it. */
    public Instant wallOf(long nanos) {
        Anchor best = null;
        for (Anchor anchor : anchors()) {
            if (best == null || anchor.nanos() <= nanos) {
                best = anchor;
            }
        }
        return best.wallOf(nanos);
    }

    /** All channels that were ever read or drawn, in the order in which they first came. */
    public List<Channel> channels() {
        return List.copyOf(read(records::channels).keySet());
    }

    /** The readings of a channel whose reply lies in the span, in recording order, one after the other. */
    public void readings(Channel channel, TimeSpan span, Consumer<Reading> sink) {
        each(channel, span, columns -> {
            for (int i = 0; i < columns.size(); i++) {
                if (span.holds(columns.repliedNanos(i))) {
                    int at = i;
                    sink.accept(read(() -> reading(channel, columns, at)));
                }
            }
        });
    }

    private void each(Channel channel, TimeSpan span, Consumer<ReadingColumns> sink) {
        channelSeq(channel)
                .ifPresent(seq -> read(() -> {
                    readings.each(seq, span, sink);
                    return null;
                }));
    }

    private Reading reading(Channel channel, ReadingColumns columns, int i) throws SQLException {
        long requested = columns.requestedNanos(i);
        long replied = columns.repliedNanos(i);
        return switch (columns.kind(i)) {
            case ReadingColumns.MEASURED -> measured(channel, columns.value(i), requested, replied);
            case ReadingColumns.OVERLOAD -> new Overload(channel, requested, replied);
            default -> new Missing(channel, records.reason(columns.payload(i)), requested, replied);
        };
    }

    private static Reading measured(Channel channel, double value, long requested, long replied) throws SQLException {
        if (!Double.isFinite(value)) {
            throw new SQLException("a reading of " + channel + " is no number");
        }
        return new Measured(channel, value, requested, replied);
    }

    /** The numbers of a channel in a span as arrays: a step's {@link StepEntry#average()} gives an operating point. */
    public Trace trace(Channel channel, TimeSpan span) {
        TraceCollector collector = new TraceCollector(channel);
        each(channel, span, columns -> collector.add(columns, span));
        return collector.trace();
    }

    /** The numbers of every channel in a span, by channel; channels without any reading there are left out. */
    public SortedMap<Channel, Trace> traces(TimeSpan span) {
        SortedMap<Channel, Trace> all = new TreeMap<>();
        for (Channel channel : channels()) {
            Trace trace = trace(channel, span);
            if (trace.count() + trace.overloads() + trace.missing() > 0) {
                all.put(channel, trace);
            }
        }
        return all;
    }

    /**
     * Draws a channel into columns.
     *
     * @param span what is drawn; cut to what was recorded
     * @param columns at most how many, 1 or more
     */
    public Envelope envelope(Channel channel, TimeSpan span, int columns) {
        if (columns < 1) {
            throw new IllegalArgumentException("columns " + columns + " must be 1 or more");
        }
        long from = Math.max(span.fromNanos(), 0);
        long to = Math.max(from + 1, Math.min(span.toNanos(), lastNanos() + 1));
        int spanSeconds = SummaryReader.spanFor(from, to, columns);
        long stepNanos = Math.max(1, spanSeconds * 1_000_000_000L);
        EnvelopeDrawer drawer = new EnvelopeDrawer(channel, EnvelopeDrawer.edges(from, to, columns, stepNanos));
        channelSeq(channel)
                .ifPresent(seq -> read(() -> {
                    summaries.draw(seq, new TimeSpan(from, to), spanSeconds, drawer);
                    return null;
                }));
        return drawer.envelope();
    }

    /** The last reading of each channel. */
    public SortedMap<Channel, Reading> lastValues() {
        SortedMap<Channel, Reading> last = new TreeMap<>();
        read(records::channels)
                .forEach((channel, seq) -> read(() -> {
                    readings.last(seq).ifPresent(columns -> last.put(channel, lastOf(channel, columns)));
                    return null;
                }));
        return last;
    }

    private Reading lastOf(Channel channel, ReadingColumns columns) {
        return read(() -> reading(channel, columns, columns.size() - 1));
    }

    private Optional<Long> channelSeq(Channel channel) {
        return Optional.ofNullable(read(records::channels).get(channel));
    }

    /** A question to the database. */
    interface Query<T> {
        T ask() throws SQLException;
    }

    private synchronized <T> T read(Query<T> query) {
        if (depth++ == 0) {
            bound.begin();
        }
        try {
            return query.ask();
        } catch (SQLException e) {
            throw OpenedFile.damaged(file, e);
        } finally {
            depth--;
        }
    }

    @Override
    public synchronized void close() {
        readings.close();
        Sqlite.closeQuietly(connection);
    }
}
