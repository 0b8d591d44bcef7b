package railwitness.safety.guardian;

import java.io.IOException;

/** Bytes to an instrument and back. */
interface BytePort extends AutoCloseable {
    void write(byte[] bytes) throws IOException;

    /** Whatever has come by now without waiting; may be nothing. */
    byte[] read();

    @Override
    void close();
}
