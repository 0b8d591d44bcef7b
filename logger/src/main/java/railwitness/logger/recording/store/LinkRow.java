package railwitness.logger.recording.store;

/** A link of the chain: the digest over all records up to and with {@code lastSeq}. */
record LinkRow(long lastSeq, long atNanos, byte[] digest) {}
