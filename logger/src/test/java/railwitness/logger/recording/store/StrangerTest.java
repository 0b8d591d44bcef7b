package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.CRC32;
import java.util.zip.Inflater;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;

/**
 * A reader as a stranger would write it from {@code docs/session-file.md} alone: JDBC and the JDK, none of the
 * program's classes. Only the comparison at the end knows the program.
 */
class StrangerTest {
    private record Row(long requested, long replied, Double value, Long reason) {}

    @TempDir
    Path folder;

    /** All readings of the file, by their number, and of each channel. */
    private final TreeMap<Long, byte[]> records = new TreeMap<>();

    private final Map<String, List<Row>> readings = new LinkedHashMap<>();

    @Test
    void aStrangerReadsEveryReadingAndChecksTheChain() throws Exception {
        Path complete = folder.resolve("complete.session");
        Recording recorded = Recording.complete(complete, 21);
        read(complete);
        assertSame(recorded);
        Path interrupted = folder.resolve("interrupted.session");
        Recording other = new Recording(22);
        try (SessionWriter writer = SessionWriter.create(interrupted, Heads.plain())) {
            other.write(writer, 900, 200_000_000L);
        }
        read(interrupted);
        assertSame(other);
    }

    private void read(Path file) throws Exception {
        records.clear();
        readings.clear();
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = c.createStatement()) {
            assertThat(s.executeQuery("PRAGMA application_id").getLong(1)).isEqualTo(1381452116L);
            assertThat(s.executeQuery("PRAGMA user_version").getLong(1)).isEqualTo(1);
            Map<Long, String> channels = new LinkedHashMap<>();
            ResultSet r = s.executeQuery("SELECT seq, name FROM channel ORDER BY seq");
            while (r.next()) {
                channels.put(r.getLong(1), r.getString(2));
            }
            for (Map.Entry<Long, String> channel : channels.entrySet()) {
                readings.put(channel.getValue(), new ArrayList<>());
                readChannel(s, channel.getKey(), readings.get(channel.getValue()));
            }
            readRows(s);
            checkChain(s);
        }
    }

    private void readChannel(Statement s, long channel, List<Row> rows) throws Exception {
        ResultSet r = s.executeQuery("SELECT packed FROM block WHERE channel = " + channel + " ORDER BY first_seq");
        while (r.next()) {
            unpack(r.getBytes(1), channel, rows);
        }
        r = s.executeQuery("SELECT seq, requested_ns, replied_ns, value, reason FROM reading WHERE channel = " + channel
                + " ORDER BY seq");
        while (r.next()) {
            Double value = r.getObject(4) == null ? null : r.getDouble(4);
            Long reason = r.getObject(5) == null ? null : r.getLong(5);
            add(channel, r.getLong(1), new Row(r.getLong(2), r.getLong(3), value, reason), rows);
        }
    }

    private void add(long channel, long seq, Row row, List<Row> rows) {
        rows.add(row);
        int kind = row.value != null ? 1 : row.reason == null ? 2 : 3;
        long last = kind == 1 ? Double.doubleToRawLongBits(row.value) : kind == 2 ? 0 : row.reason;
        ByteBuffer bytes = ByteBuffer.allocate(29);
        bytes.put((byte) kind)
                .putInt((int) channel)
                .putLong(row.requested)
                .putLong(row.replied)
                .putLong(last);
        assertThat(records.put(seq, bytes.array())).isNull();
    }

    private void unpack(byte[] packed, long channel, List<Row> rows) throws Exception {
        CRC32 crc = new CRC32();
        crc.update(packed, 0, packed.length - 4);
        ByteBuffer b = ByteBuffer.wrap(packed);
        assertThat(b.getInt(packed.length - 4)).isEqualTo((int) crc.getValue());
        assertThat(b.get()).isEqualTo((byte) 1);
        int n = b.getInt();
        long[] seq = column(b, n);
        long[] requested = column(b, n);
        long[] took = column(b, n);
        long[] kind = column(b, n);
        long[] reason = column(b, count(kind, 3));
        double[] number = numbers(b, count(kind, 1));
        int atReason = 0;
        int atNumber = 0;
        for (int i = 0; i < n; i++) {
            Double value = kind[i] == 1 ? number[atNumber++] : null;
            Long why = kind[i] == 3 ? reason[atReason++] : null;
            add(channel, seq[i], new Row(requested[i], requested[i] + took[i], value, why), rows);
        }
    }

    private static int count(long[] kinds, long kind) {
        int count = 0;
        for (long k : kinds) {
            count += k == kind ? 1 : 0;
        }
        return count;
    }

    private static double[] numbers(ByteBuffer b, int k) throws Exception {
        double[] numbers = new double[k];
        boolean scaled = b.get() == 1;
        double scale = scaled ? b.getDouble() : 0;
        long[] whole = column(b, k);
        long[] correction = scaled ? column(b, k) : null;
        for (int i = 0; i < k; i++) {
            long bits = scaled
                    ? Double.doubleToRawLongBits(whole[i] / scale) + correction[i]
                    : whole[i] < 0 ? whole[i] ^ Long.MAX_VALUE : whole[i];
            numbers[i] = Double.longBitsToDouble(bits);
        }
        return numbers;
    }

    private static long[] column(ByteBuffer b, int n) throws Exception {
        long[] numbers = new long[n];
        int end = b.getInt() + b.position();
        boolean differences = b.get() == 1;
        int from = 0;
        if (differences) {
            numbers[0] = b.getLong();
            from = 1;
        }
        long least = b.getLong();
        int planes = b.get();
        for (int p = 0; p < planes; p++) {
            byte[] plane = plane(b, n - from);
            for (int i = from; i < n; i++) {
                numbers[i] |= (plane[i - from] & 0xffL) << 8 * p;
            }
        }
        for (int i = from; i < n; i++) {
            numbers[i] += least + (differences ? numbers[i - 1] : 0);
        }
        assertThat(b.position()).isEqualTo(end);
        return numbers;
    }

    private static byte[] plane(ByteBuffer b, int n) throws Exception {
        byte[] plane = new byte[n];
        if (b.get() == 0) {
            b.get(plane);
            return plane;
        }
        byte[] deflated = new byte[b.getInt()];
        b.get(deflated);
        Inflater inflater = new Inflater(true);
        inflater.setInput(deflated);
        assertThat(inflater.inflate(plane)).isEqualTo(n);
        inflater.end();
        return plane;
    }

    private void readRows(Statement s) throws Exception {
        String[] tables = {
            "A session",
            "C channel",
            "R reason",
            "S sheet",
            "I instrument",
            "P step",
            "L step_load",
            "E event",
            "X exchange",
            "W waveform",
            "N note",
            "K anchor",
            "Z ending"
        };
        for (String table : tables) {
            ResultSet r = s.executeQuery("SELECT * FROM " + table.substring(2));
            while (r.next()) {
                assertThat(records.put(r.getLong(1), fed(table.charAt(0), r))).isNull();
            }
        }
    }

    private static byte[] fed(char tag, ResultSet r) throws Exception {
        ByteBuffer bytes = ByteBuffer.allocate(100_000);
        bytes.put((byte) tag).putLong(r.getLong(1));
        for (int i = 2; i <= r.getMetaData().getColumnCount(); i++) {
            Object cell = r.getObject(i);
            if (cell == null) {
                bytes.put((byte) 'N');
            } else if (cell instanceof Double) {
                bytes.put((byte) 'D').putDouble((Double) cell);
            } else if (cell instanceof Number) {
                bytes.put((byte) 'I').putLong(((Number) cell).longValue());
            } else {
                byte[] content = cell instanceof byte[] b ? b : ((String) cell).getBytes(StandardCharsets.UTF_8);
                bytes.put((byte) (cell instanceof byte[] ? 'B' : 'T'))
                        .putInt(content.length)
                        .put(content);
            }
        }
        return java.util.Arrays.copyOf(bytes.array(), bytes.position());
    }

    private void checkChain(Statement s) throws Exception {
        byte[] before = new byte[32];
        long last = 0;
        ResultSet r = s.executeQuery("SELECT last_seq, at_ns, digest FROM link ORDER BY last_seq");
        while (r.next()) {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            sha.update(before);
            for (byte[] record : records.subMap(last, false, r.getLong(1), true).values()) {
                sha.update(record);
            }
            last = r.getLong(1);
            before = sha.digest(ByteBuffer.allocate(8).putLong(r.getLong(2)).array());
            assertThat(before).isEqualTo(r.getBytes(3));
        }
        assertThat(records.lastKey()).isEqualTo(last).isEqualTo(records.size());
    }

    private void assertSame(Recording recorded) {
        recorded.readings.forEach((channel, given) -> {
            List<Row> read = readings.get(channel.toString());
            assertThat(read).hasSize(given.size());
            for (int i = 0; i < read.size(); i++) {
                assertSame(read.get(i), given.get(i));
            }
        });
    }

    private static void assertSame(Row row, Reading reading) {
        assertThat(row.requested).isEqualTo(reading.requestedNanos());
        assertThat(row.replied).isEqualTo(reading.repliedNanos());
        assertThat(row.value).isEqualTo(reading instanceof Measured m ? (Double) m.value() : null);
        assertThat(row.reason != null).isEqualTo(reading instanceof Missing);
    }
}
