package railwitness.logger.store;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Waveform;

/** Reads entries back from the record tables. */
final class RecordReader {
    private final Connection connection;
    private final Map<Long, String> reasons = new HashMap<>();

    RecordReader(Connection connection) {
        this.connection = connection;
    }

    /** Turns the row that stands in the result into an entry; the first column is its number. */
    private interface RowMapper<T> {
        T map(ResultSet row) throws SQLException;
    }

    private <T> List<T> all(RecordTable table, RowMapper<T> mapper) throws SQLException {
        List<T> entries = new ArrayList<>();
        each(table, entries::add, mapper);
        return entries;
    }

    /** Hands the rows over one after the other, in recording order. */
    private <T> void each(RecordTable table, Consumer<T> sink, RowMapper<T> mapper) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(table.selectSql())) {
            while (rows.next()) {
                sink.accept(mapped(table, mapper, rows));
            }
        }
    }

    /** A row that says what no recorder writes was altered: that is damage, not a mistake in the program. */
    private static <T> T mapped(RecordTable table, RowMapper<T> mapper, ResultSet row) throws SQLException {
        try {
            return mapper.map(row);
        } catch (IllegalArgumentException | DateTimeException e) {
            throw new SQLException(
                    "a row of its table " + table.name().toLowerCase(Locale.ROOT) + ": " + e.getMessage(), e);
        }
    }

    Optional<SessionHead> head() throws SQLException {
        return all(
                        RecordTable.SESSION,
                        r -> new SessionHead(
                                r.getString(2),
                                Instant.parse(r.getString(3)),
                                ZoneId.of(r.getString(4)),
                                r.getInt(5) == 1,
                                r.getString(6),
                                r.getString(7),
                                r.getString(8),
                                r.getString(9),
                                r.getString(10)))
                .stream()
                .findFirst();
    }

    /** Words of a reason for a missing reading, by the number of its record. */
    String reason(long seq) throws SQLException {
        if (!reasons.containsKey(seq)) {
            all(RecordTable.REASON, r -> reasons.put(r.getLong(1), r.getString(2)));
        }
        String words = reasons.get(seq);
        if (words == null) {
            throw new SQLException("a reading names the unknown reason " + seq);
        }
        return words;
    }

    Map<Channel, Long> channels() throws SQLException {
        Map<Channel, Long> channels = new LinkedHashMap<>();
        for (Map.Entry<Long, Channel> entry : channelsBySeq().entrySet()) {
            channels.put(entry.getValue(), entry.getKey());
        }
        return channels;
    }

    private Map<Long, Channel> channelsBySeq() throws SQLException {
        Map<Long, Channel> channels = new LinkedHashMap<>();
        all(RecordTable.CHANNEL, r -> channels.put(r.getLong(1), Channel.of(r.getString(2))));
        return channels;
    }

    List<SheetEntry> sheets() throws SQLException {
        return all(RecordTable.SHEET, r -> new SheetEntry(r.getString(2), r.getString(3), r.getString(4)));
    }

    List<InstrumentEntry> instruments() throws SQLException {
        return all(
                RecordTable.INSTRUMENT,
                r -> new InstrumentEntry(
                        r.getString(2),
                        r.getString(3),
                        r.getString(4),
                        r.getString(5),
                        new Identity(r.getString(6), r.getString(7), r.getString(8), r.getString(9)),
                        r.getString(10)));
    }

    List<StepEntry> steps() throws SQLException {
        Map<Long, SortedMap<String, Double>> loads = new HashMap<>();
        all(RecordTable.STEP_LOAD, r -> loads.computeIfAbsent(r.getLong(2), seq -> new TreeMap<>())
                .put(r.getString(3), r.getDouble(4)));
        return all(RecordTable.STEP, r -> step(r, loads.getOrDefault(r.getLong(1), new TreeMap<>())));
    }

    private static StepEntry step(ResultSet r, SortedMap<String, Double> loads) throws SQLException {
        Optional<TimeSpan> average = r.getObject(5) == null || r.getObject(6) == null
                ? Optional.empty()
                : Optional.of(new TimeSpan(r.getLong(5), r.getLong(6)));
        return new StepEntry(
                r.getString(2),
                r.getString(3),
                r.getLong(4),
                average,
                r.getInt(7) == 1,
                StepOutcome.of(r.getString(8)),
                r.getString(9),
                r.getObject(10) == null ? OptionalDouble.empty() : OptionalDouble.of(r.getDouble(10)),
                loads);
    }

    List<EventEntry> events() throws SQLException {
        return all(RecordTable.EVENT, r -> new EventEntry(r.getLong(2), r.getString(3), r.getString(4)));
    }

    List<ExchangeEntry> exchanges() throws SQLException {
        List<ExchangeEntry> all = new ArrayList<>();
        exchanges(all::add);
        return all;
    }

    void exchanges(Consumer<ExchangeEntry> sink) throws SQLException {
        each(
                RecordTable.EXCHANGE,
                sink,
                r -> new ExchangeEntry(r.getLong(2), r.getString(3), r.getString(4), r.getString(5), r.getString(6)));
    }

    List<NoteEntry> notes() throws SQLException {
        return all(RecordTable.NOTE, r -> new NoteEntry(r.getLong(2), r.getString(3), r.getString(4)));
    }

    List<WaveformEntry> waveforms() throws SQLException {
        List<WaveformEntry> all = new ArrayList<>();
        waveforms(all::add);
        return all;
    }

    void waveforms(Consumer<WaveformEntry> sink) throws SQLException {
        Map<Long, Channel> channels = channelsBySeq();
        each(
                RecordTable.WAVEFORM,
                sink,
                r -> new WaveformEntry(
                        r.getLong(2),
                        new Waveform(
                                channels.get(r.getLong(3)), r.getDouble(4), r.getDouble(5), samples(r.getBytes(6)))));
    }

    private static double[] samples(byte[] bytes) {
        double[] values = new double[bytes.length / 8];
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asDoubleBuffer().get(values);
        return values;
    }

    List<Anchor> anchors() throws SQLException {
        return all(RecordTable.ANCHOR, r -> new Anchor(r.getLong(2), Instant.parse(r.getString(3))));
    }

    List<Ending> endings() throws SQLException {
        return all(RecordTable.ENDING, r -> new Ending(r.getLong(2), SessionState.of(r.getString(3))));
    }

    long lastNanos() throws SQLException {
        return lastLink(r -> r.getLong(1)).orElse(0L);
    }

    String seal() throws SQLException {
        return lastLink(r -> HexFormat.of().formatHex(r.getBytes(2))).orElse("");
    }

    private <T> Optional<T> lastLink(RowMapper<T> mapper) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery("SELECT at_ns, digest FROM link ORDER BY last_seq DESC LIMIT 1")) {
            return rows.next() ? Optional.of(mapper.map(rows)) : Optional.empty();
        }
    }
}
