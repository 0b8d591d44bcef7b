package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;

/**
 * What comes back for one message.
 *
 * @param reply the bytes without terminator; empty when the instrument has nothing to say
 * @param complete from the message's arrival until the reply is complete or, without a reply, until the instrument is
 *     ready again; zero or more
 */
public record Answer(Optional<byte[]> reply, Duration complete) {
    public Answer {
        if (complete.isNegative()) {
            throw new IllegalArgumentException("time until complete " + complete + " must be zero or more");
        }
    }

    /** Nothing comes back. */
    public static Answer silence(Duration ready) {
        return new Answer(Optional.empty(), ready);
    }

    /** A line of text comes back (characters of one byte each). */
    public static Answer of(String reply, Duration complete) {
        return of(reply.getBytes(StandardCharsets.ISO_8859_1), complete);
    }

    /** Bytes come back, such as a block with its header. */
    public static Answer of(byte[] reply, Duration complete) {
        return new Answer(Optional.of(reply), complete);
    }
}
