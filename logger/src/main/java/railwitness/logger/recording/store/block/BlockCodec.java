package railwitness.logger.recording.store.block;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.OptionalDouble;
import java.util.zip.CRC32;

/**
 * Packs the readings of one channel into a block and unpacks it again, bit for bit. The form is in {@code
 * docs/session-file.md}. Not for several threads; {@link #close} frees memory.
 */
public final class BlockCodec implements AutoCloseable {
    /** Most readings that a block holds. */
    public static final int MOST_READINGS = 4096;

    private static final byte FORM = 1;
    private static final byte BITS = 0;
    private static final byte LATTICE = 1;

    private final CRC32 crc = new CRC32();
    private final IntegerColumn column = new IntegerColumn();
    private final long[] numbers = new long[MOST_READINGS];
    private final long[] corrections = new long[MOST_READINGS];
    private final double[] values = new double[MOST_READINGS];
    private final ByteBuffer out = ByteBuffer.allocate(7 * (60 + 9 * MOST_READINGS));

    /** Packs all of 1 to {@link #MOST_READINGS} readings. */
    public byte[] pack(ReadingColumns readings) {
        int n = readings.size();
        if (n < 1 || n > MOST_READINGS) {
            throw new IllegalArgumentException("a block holds 1 to " + MOST_READINGS + " readings, not " + n);
        }
        out.clear();
        out.put(FORM).putInt(n);
        for (int i = 0; i < n; i++) {
            numbers[i] = readings.seq(i);
        }
        write(n);
        for (int i = 0; i < n; i++) {
            numbers[i] = readings.requestedNanos(i);
        }
        write(n);
        for (int i = 0; i < n; i++) {
            numbers[i] = readings.repliedNanos(i) - readings.requestedNanos(i);
        }
        write(n);
        for (int i = 0; i < n; i++) {
            numbers[i] = readings.kind(i);
        }
        write(n);
        writeReasons(readings);
        writeValues(readings);
        crc.reset();
        crc.update(out.array(), 0, out.position());
        out.putInt((int) crc.getValue());
        byte[] packed = new byte[out.position()];
        out.flip().get(packed);
        return packed;
    }

    private void writeReasons(ReadingColumns readings) {
        int count = 0;
        for (int i = 0; i < readings.size(); i++) {
            if (readings.kind(i) == ReadingColumns.MISSING) {
                numbers[count++] = readings.payload(i);
            }
        }
        write(count);
    }

    private void writeValues(ReadingColumns readings) {
        int count = 0;
        for (int i = 0; i < readings.size(); i++) {
            if (readings.kind(i) == ReadingColumns.MEASURED) {
                values[count++] = readings.value(i);
            }
        }
        OptionalDouble scale = Lattice.scaleOf(values, count);
        if (scale.isPresent()) {
            writeLattice(count, scale.getAsDouble());
        } else {
            writeBits(count);
        }
    }

    private void writeLattice(int count, double scale) {
        out.put(LATTICE).putDouble(scale);
        for (int i = 0; i < count; i++) {
            numbers[i] = Lattice.count(values[i], scale);
            corrections[i] = Lattice.correction(values[i], numbers[i], scale);
        }
        write(count);
        System.arraycopy(corrections, 0, numbers, 0, count);
        write(count);
    }

    private void writeBits(int count) {
        out.put(BITS);
        for (int i = 0; i < count; i++) {
            numbers[i] = ordered(Double.doubleToRawLongBits(values[i]));
        }
        write(count);
    }

    /** Turns the bits of a double into an integer that sorts as the number does, and back. */
    private static long ordered(long bits) {
        return bits ^ ((bits >> 63) & Long.MAX_VALUE);
    }

    private void write(int n) {
        int start = out.position();
        out.putInt(0);
        column.write(numbers, n, out);
        out.putInt(start, out.position() - start - 4);
    }

    /**
     * Unpacks a block; what stood in {@code readings} is cleared.
     *
     * @throws IllegalArgumentException when the bytes are no block
     */
    public void unpack(byte[] packed, ReadingColumns readings) {
        try {
            int length = packed.length - 4;
            crc.reset();
            crc.update(packed, 0, Math.max(0, length));
            if (length < 1 || ByteBuffer.wrap(packed).getInt(length) != (int) crc.getValue()) {
                throw new IllegalArgumentException("packed block does not match its check value");
            }
            ByteBuffer in = ByteBuffer.wrap(packed, 0, length);
            if (in.get() != FORM) {
                throw new IllegalArgumentException("packed block has an unknown form");
            }
            int n = in.getInt();
            if (n < 1 || n > MOST_READINGS) {
                throw new IllegalArgumentException("packed block is said to hold " + n + " readings");
            }
            readings.reset(n);
            readColumn(in, readings.seqs(), n);
            readColumn(in, readings.requested(), n);
            readColumn(in, readings.replied(), n);
            readKinds(in, readings, n);
            readReasons(in, readings, n);
            readValues(in, readings, n);
            if (in.hasRemaining()) {
                throw new IllegalArgumentException("packed block has bytes behind its end");
            }
        } catch (BufferUnderflowException e) {
            throw new IllegalArgumentException("packed block is cut short", e);
        }
    }

    private void readColumn(ByteBuffer in, long[] target, int n) {
        int end = in.getInt() + in.position();
        column.read(in, target, n);
        if (in.position() != end) {
            throw new IllegalArgumentException("packed column is not as long as it says");
        }
    }

    private void readKinds(ByteBuffer in, ReadingColumns readings, int n) {
        readColumn(in, numbers, n);
        long[] requested = readings.requested();
        long[] replied = readings.replied();
        byte[] kinds = readings.kinds();
        for (int i = 0; i < n; i++) {
            replied[i] += requested[i];
            if (numbers[i] < ReadingColumns.MEASURED || numbers[i] > ReadingColumns.MISSING) {
                throw new IllegalArgumentException("packed reading is of the unknown kind " + numbers[i]);
            }
            kinds[i] = (byte) numbers[i];
        }
    }

    private void readReasons(ByteBuffer in, ReadingColumns readings, int n) {
        int count = readings.count(ReadingColumns.MISSING);
        readColumn(in, numbers, count);
        spread(readings, n, ReadingColumns.MISSING);
    }

    private void readValues(ByteBuffer in, ReadingColumns readings, int n) {
        int count = readings.count(ReadingColumns.MEASURED);
        byte form = in.get();
        if (form == LATTICE) {
            double scale = in.getDouble();
            readColumn(in, numbers, count);
            readColumn(in, corrections, count);
            for (int i = 0; i < count; i++) {
                numbers[i] = Double.doubleToRawLongBits(numbers[i] / scale) + corrections[i];
            }
        } else if (form == BITS) {
            readColumn(in, numbers, count);
            for (int i = 0; i < count; i++) {
                numbers[i] = ordered(numbers[i]);
            }
        } else {
            throw new IllegalArgumentException("packed numbers have the unknown form " + form);
        }
        spread(readings, n, ReadingColumns.MEASURED);
    }

    /** Hands the numbers out, one after the other, to the readings of that kind. */
    private void spread(ReadingColumns readings, int n, int kind) {
        byte[] kinds = readings.kinds();
        long[] payloads = readings.payloads();
        int next = 0;
        for (int i = 0; i < n; i++) {
            if (kinds[i] == kind) {
                payloads[i] = numbers[next++];
            }
        }
    }

    @Override
    public void close() {
        column.close();
    }
}
