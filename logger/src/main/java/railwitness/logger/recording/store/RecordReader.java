package railwitness.logger.recording.store;

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
        } catch (IllegalArgumentException
                | DateTimeException
                | NullPointerException
                | ArithmeticException
                | IndexOutOfBoundsException e) {
            throw new SQLException(
                    "a row of its table " + table.name().toLowerCase(Locale.ROOT) + ": " + e.getMessage(), e);
        }
    }

    Optional<SessionHead> head() throws SQLException {
        return all(
                        RecordTable.SESSION,
                        r -> new SessionHead(
                                Cells.text(r, 2),
                                Instant.parse(Cells.text(r, 3)),
                                ZoneId.of(Cells.text(r, 4)),
                                Cells.whole(r, 5) == 1,
                                Cells.text(r, 6),
                                Cells.text(r, 7),
                                Cells.text(r, 8),
                                Cells.text(r, 9),
                                Cells.text(r, 10)))
                .stream()
                .findFirst();
    }

    /** Words of a reason for a missing reading, by the number of its record. */
    String reason(long seq) throws SQLException {
        if (!reasons.containsKey(seq)) {
            all(RecordTable.REASON, r -> reasons.put(Cells.whole(r, 1), Cells.text(r, 2)));
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
        all(RecordTable.CHANNEL, r -> channels.put(Cells.whole(r, 1), Channel.of(Cells.text(r, 2))));
        return channels;
    }

    List<SheetEntry> sheets() throws SQLException {
        return all(RecordTable.SHEET, r -> new SheetEntry(Cells.text(r, 2), Cells.text(r, 3), Cells.text(r, 4)));
    }

    List<InstrumentEntry> instruments() throws SQLException {
        return all(
                RecordTable.INSTRUMENT,
                r -> new InstrumentEntry(
                        Cells.text(r, 2),
                        Cells.text(r, 3),
                        Cells.text(r, 4),
                        Cells.text(r, 5),
                        new Identity(Cells.text(r, 6), Cells.text(r, 7), Cells.text(r, 8), Cells.text(r, 9)),
                        Cells.text(r, 10)));
    }

    List<StepEntry> steps() throws SQLException {
        Map<Long, SortedMap<String, Double>> loads = new HashMap<>();
        all(RecordTable.STEP_LOAD, r -> loads.computeIfAbsent(Cells.whole(r, 2), seq -> new TreeMap<>())
                .put(Cells.text(r, 3), Cells.number(r, 4)));
        return all(RecordTable.STEP, r -> step(r, loads.getOrDefault(Cells.whole(r, 1), new TreeMap<>())));
    }

    private static StepEntry step(ResultSet r, SortedMap<String, Double> loads) throws SQLException {
        Optional<TimeSpan> average = r.getObject(5) == null || r.getObject(6) == null
                ? Optional.empty()
                : Optional.of(new TimeSpan(Cells.whole(r, 5), Cells.whole(r, 6)));
        return new StepEntry(
                Cells.text(r, 2),
                Cells.text(r, 3),
                Cells.whole(r, 4),
                average,
                Cells.whole(r, 7) == 1,
                StepOutcome.of(Cells.text(r, 8)),
                Cells.text(r, 9),
                r.getObject(10) == null ? OptionalDouble.empty() : OptionalDouble.of(Cells.number(r, 10)),
                loads);
    }

    List<EventEntry> events() throws SQLException {
        return all(RecordTable.EVENT, r -> new EventEntry(Cells.whole(r, 2), Cells.text(r, 3), Cells.text(r, 4)));
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
                r -> new ExchangeEntry(
                        Cells.whole(r, 2), Cells.text(r, 3), Cells.text(r, 4), Cells.text(r, 5), Cells.text(r, 6)));
    }

    List<NoteEntry> notes() throws SQLException {
        return all(RecordTable.NOTE, r -> new NoteEntry(Cells.whole(r, 2), Cells.text(r, 3), Cells.text(r, 4)));
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
                        Cells.whole(r, 2),
                        new Waveform(
                                channels.get(Cells.whole(r, 3)),
                                Cells.number(r, 4),
                                Cells.number(r, 5),
                                samples(Cells.bytes(r, 6)))));
    }

    private static double[] samples(byte[] bytes) {
        if (bytes.length % 8 != 0) {
            throw new IllegalArgumentException("a waveform's samples are cut short");
        }
        double[] values = new double[bytes.length / 8];
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asDoubleBuffer().get(values);
        return values;
    }

    List<Anchor> anchors() throws SQLException {
        return all(RecordTable.ANCHOR, r -> new Anchor(Cells.whole(r, 2), Instant.parse(Cells.text(r, 3))));
    }

    List<SessionEnd> endings() throws SQLException {
        return all(RecordTable.ENDING, r -> new SessionEnd(Cells.whole(r, 2), SessionState.of(Cells.text(r, 3))));
    }

    long lastNanos() throws SQLException {
        return lastLink(r -> Cells.whole(r, 1)).orElse(0L);
    }

    String seal() throws SQLException {
        return lastLink(r -> HexFormat.of().formatHex(Cells.bytes(r, 2))).orElse("");
    }

    private <T> Optional<T> lastLink(RowMapper<T> mapper) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery("SELECT at_ns, digest FROM link ORDER BY last_seq DESC LIMIT 1")) {
            return rows.next() ? Optional.of(mapper.map(rows)) : Optional.empty();
        }
    }
}
