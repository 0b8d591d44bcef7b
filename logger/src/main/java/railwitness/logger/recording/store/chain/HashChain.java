package railwitness.logger.recording.store.chain;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;

/**
 * SHA-256 (FIPS 180-4) over records in recording order, cut into links. A link's digest is taken over the digest of the
 * link before it (32 bytes of zero before the first), the link's records, and its time in eight bytes. Numbers are
 * big-endian. Not for several threads.
 */
public final class HashChain {
    private static final int READING_BYTES = 29;

    private final MessageDigest sha;
    private final ByteBuffer buffer = ByteBuffer.allocate(1 << 13);
    private byte[] digest = new byte[32];
    private boolean empty = true;

    public HashChain() {
        try {
            sha = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
        buffer.put(digest);
    }

    /** True when no record came since the last link. */
    public boolean isEmpty() {
        return empty;
    }

    /**
     * Feeds a reading.
     *
     * @param kind 1 measured, 2 overload, 3 missing
     * @param payload bits of the number (IEEE 754 binary64), zero, or the number of the reason
     */
    public void reading(int kind, int channel, long requestedNanos, long repliedNanos, long payload) {
        if (buffer.remaining() < READING_BYTES) {
            drain();
        }
        buffer.put((byte) kind)
                .putInt(channel)
                .putLong(requestedNanos)
                .putLong(repliedNanos)
                .putLong(payload);
        empty = false;
    }

    /**
     * Feeds any other record: its tag, its number, and each cell as a letter for its storage class (N none, I integer, D
     * double, T text, B bytes) with its content.
     *
     * @param cells each null, Long, Double, String or byte[]
     */
    public void row(char tag, long seq, Object[] cells) {
        drain();
        buffer.put((byte) tag).putLong(seq);
        for (Object cell : cells) {
            if (buffer.remaining() < 9) {
                drain();
            }
            cell(cell);
        }
        empty = false;
    }

    private void cell(Object cell) {
        if (cell == null) {
            buffer.put((byte) 'N');
        } else if (cell instanceof String text) {
            bytes('T', text.getBytes(StandardCharsets.UTF_8));
        } else if (cell instanceof byte[] bytes) {
            bytes('B', bytes);
        } else if (cell instanceof Double number) {
            buffer.put((byte) 'D').putLong(Double.doubleToRawLongBits(number));
        } else {
            buffer.put((byte) 'I').putLong(((Number) cell).longValue());
        }
    }

    private void bytes(char letter, byte[] content) {
        buffer.put((byte) letter).putInt(content.length);
        drain();
        sha.update(content);
    }

    /** Ends the link and returns its digest, 32 bytes. */
    public byte[] link(long atNanos) {
        if (buffer.remaining() < 8) {
            drain();
        }
        buffer.putLong(atNanos);
        drain();
        goOnFrom(sha.digest());
        return digest.clone();
    }

    /** Takes the given digest for that of the link before, so that checking can go on behind a broken link. */
    public void goOnFrom(byte[] linkDigest) {
        sha.reset();
        buffer.clear();
        digest = Arrays.copyOf(linkDigest, 32); // an altered file may hold one of any length
        buffer.put(digest);
        empty = true;
    }

    private void drain() {
        sha.update(buffer.array(), 0, buffer.position());
        buffer.clear();
    }
}
