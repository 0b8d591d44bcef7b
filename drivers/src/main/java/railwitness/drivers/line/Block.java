package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The definite-length block of IEEE 488.2: {@code #}, one digit that says how many digits follow, the length in bytes,
 * the bytes.
 */
public final class Block {
    /** Longest block, bytes. */
    static final int LONGEST = 64 * 1024 * 1024;

    private Block() {}

    /** Wraps bytes into a block. */
    public static byte[] of(byte[] content) {
        String length = Integer.toString(content.length);
        byte[] head = ("#" + length.length() + length).getBytes(StandardCharsets.US_ASCII);
        byte[] block = Arrays.copyOf(head, head.length + content.length);
        System.arraycopy(content, 0, block, head.length, content.length);
        return block;
    }

    /**
     * Takes the bytes out of a block; what follows the block is ignored.
     *
     * @throws LineException GARBLED when the header is none or bytes are lacking
     */
    static byte[] content(String port, String sent, byte[] reply) {
        int whole = lengthOf(reply, reply.length);
        if (whole < 0 || whole > reply.length) {
            throw LineException.garbled(port, sent, new String(reply, StandardCharsets.ISO_8859_1), "a block");
        }
        return Arrays.copyOfRange(reply, 2 + (reply[1] - '0'), whole);
    }

    /** Length of the whole block that starts here, or Integer.MAX_VALUE while the header is not complete; negative when it is no block. */
    static int lengthOf(byte[] bytes, int count) {
        if (count == 0 || count == 1 && bytes[0] == '#') {
            return Integer.MAX_VALUE;
        }
        int digits = bytes[1] - '0';
        if (bytes[0] != '#' || digits < 1 || digits > 9) {
            return -1;
        }
        if (count < 2 + digits) {
            return Integer.MAX_VALUE;
        }
        String length = new String(bytes, 2, digits, StandardCharsets.ISO_8859_1);
        if (!length.matches("[0-9]+") || Integer.parseInt(length) > LONGEST) {
            return -1;
        }
        return 2 + digits + Integer.parseInt(length);
    }
}
