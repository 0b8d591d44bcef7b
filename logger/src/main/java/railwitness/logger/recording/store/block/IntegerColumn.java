package railwitness.logger.recording.store.block;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * A column of 64-bit integers packed tightly: as offsets from the least of them or as differences from one to the next,
 * cut into planes of one byte, each plane raw or deflated (RFC 1951). The exact form is in {@code docs/session-file.md}.
 * All arithmetic wraps, so that every bit pattern comes back. Not for several threads; {@link #close} frees memory.
 */
final class IntegerColumn implements AutoCloseable {
    private static final byte OFFSETS = 0;
    private static final byte DIFFERENCES = 1;
    private static final byte RAW = 0;
    private static final byte DEFLATED = 1;

    private final Deflater runs = new Deflater(4, true);
    private final Deflater noise = new Deflater(1, true);
    private final Inflater inflater = new Inflater(true);
    private long[] scratch = new long[4096];
    private byte[] plane = new byte[4096];
    private byte[] packed = new byte[8192];

    IntegerColumn() {
        noise.setStrategy(Deflater.HUFFMAN_ONLY);
    }

    /** Writes the first {@code n} numbers; there must be room for 40 + 9 n bytes. */
    void write(long[] numbers, int n, ByteBuffer out) {
        room(n);
        boolean differences = n > 2 && differencesAreTighter(numbers, n);
        out.put(differences ? DIFFERENCES : OFFSETS);
        int count = n;
        if (differences) {
            out.putLong(numbers[0]);
            count = n - 1;
            for (int i = 0; i < count; i++) {
                scratch[i] = numbers[i + 1] - numbers[i];
            }
        } else {
            System.arraycopy(numbers, 0, scratch, 0, n);
        }
        writeOffsets(count, out);
    }

    private static boolean differencesAreTighter(long[] numbers, int n) {
        double mean = 0;
        for (int i = 0; i < n; i++) {
            mean += (double) numbers[i] / n;
        }
        double meanStep = ((double) numbers[n - 1] - (double) numbers[0]) / (n - 1);
        double spread = Math.abs(numbers[0] - mean);
        double stepSpread = 0;
        for (int i = 1; i < n; i++) {
            spread += Math.abs(numbers[i] - mean);
            stepSpread += Math.abs((double) (numbers[i] - numbers[i - 1]) - meanStep);
        }
        return stepSpread < spread;
    }

    private void writeOffsets(int count, ByteBuffer out) {
        long least = count == 0 ? 0 : scratch[0];
        for (int i = 1; i < count; i++) {
            least = Math.min(least, scratch[i]);
        }
        long all = 0;
        for (int i = 0; i < count; i++) {
            scratch[i] -= least;
            all |= scratch[i];
        }
        int planes = (64 - Long.numberOfLeadingZeros(all) + 7) / 8;
        out.putLong(least).put((byte) planes);
        for (int p = 0; p < planes; p++) {
            for (int i = 0; i < count; i++) {
                plane[i] = (byte) (scratch[i] >>> (8 * p));
            }
            writePlane(count, out);
        }
    }

    private void writePlane(int count, ByteBuffer out) {
        int length = deflate(count);
        if (length > 0 && length + 4 < count) {
            out.put(DEFLATED).putInt(length).put(packed, 0, length);
        } else {
            out.put(RAW).put(plane, 0, count);
        }
    }

    /** Packs the plane and returns the length, or zero when it cannot become shorter. */
    private int deflate(int count) {
        Spread spread = Spread.of(plane, count);
        if (spread.bitsPerByte() > 7.8) {
            return 0;
        }
        Deflater deflater = spread.repeats() * 2 > count ? runs : noise;
        deflater.reset();
        deflater.setInput(plane, 0, count);
        deflater.finish();
        int length = deflater.deflate(packed, 0, packed.length);
        return deflater.finished() ? length : 0;
    }

    /** Reads {@code n} numbers; throws IllegalArgumentException when the bytes cannot have been written by {@link #write}. */
    void read(ByteBuffer in, long[] numbers, int n) {
        room(n);
        try {
            byte form = in.get();
            if (form == DIFFERENCES) {
                numbers[0] = in.getLong();
                readOffsets(in, numbers, 1, n);
                for (int i = 1; i < n; i++) {
                    numbers[i] += numbers[i - 1];
                }
            } else if (form == OFFSETS) {
                readOffsets(in, numbers, 0, n);
            } else {
                throw new IllegalArgumentException("packed column has the unknown form " + form);
            }
        } catch (BufferUnderflowException | DataFormatException | IndexOutOfBoundsException e) {
            throw new IllegalArgumentException("packed column is damaged", e);
        }
    }

    private void readOffsets(ByteBuffer in, long[] numbers, int from, int to) throws DataFormatException {
        long least = in.getLong();
        int planes = in.get();
        if (planes < 0 || planes > 8) {
            throw new IllegalArgumentException("packed column has " + planes + " planes; 0 to 8 are possible");
        }
        java.util.Arrays.fill(numbers, from, to, 0);
        for (int p = 0; p < planes; p++) {
            readPlane(in, to - from);
            int shift = 8 * p;
            for (int i = from; i < to; i++) {
                numbers[i] |= (plane[i - from] & 0xffL) << shift;
            }
        }
        for (int i = from; i < to; i++) {
            numbers[i] += least;
        }
    }

    private void readPlane(ByteBuffer in, int count) throws DataFormatException {
        byte form = in.get();
        if (form == RAW) {
            in.get(plane, 0, count);
        } else if (form == DEFLATED) {
            inflate(in, count);
        } else {
            throw new IllegalArgumentException("packed plane has the unknown form " + form);
        }
    }

    private void inflate(ByteBuffer in, int count) throws DataFormatException {
        int length = in.getInt();
        if (length < 0 || length > in.remaining()) {
            throw new IllegalArgumentException("packed plane is said to be " + length + " bytes long; fewer are there");
        }
        inflater.reset();
        inflater.setInput(in.array(), in.arrayOffset() + in.position(), length);
        in.position(in.position() + length);
        if (inflater.inflate(plane, 0, count) != count) {
            throw new IllegalArgumentException("packed plane is shorter than its " + count + " bytes");
        }
    }

    private void room(int n) {
        if (scratch.length < n) {
            scratch = new long[n];
            plane = new byte[n];
            packed = new byte[2 * n];
        }
    }

    @Override
    public void close() {
        runs.end();
        noise.end();
        inflater.end();
    }
}
