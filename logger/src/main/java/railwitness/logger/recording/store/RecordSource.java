package railwitness.logger.recording.store;

import java.sql.SQLException;
import railwitness.logger.recording.store.chain.HashChain;

/** Records of one kind, in recording order, as a verification reads them again. */
interface RecordSource extends AutoCloseable {
    /** Number of the record that stands in front; {@code Long.MAX_VALUE} when there is none left. */
    long seq();

    /** Feeds the record in front to the chain, and goes on to the next. */
    void feed(HashChain chain) throws SQLException;

    /** Time of the record fed last, ns; {@code Long.MIN_VALUE} when it does not move the session on. */
    long nanos();

    /** What it holds, in a technician's words. */
    String words();

    @Override
    void close() throws SQLException;
}
