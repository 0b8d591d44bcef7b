package railwitness.drivers.reading;

/**
 * One answer of an instrument, or its absence. Times are nanoseconds of the session's monotonic axis; the value belongs
 * between the two.
 */
public sealed interface Reading permits Measured, Overload, Missing {
    Channel channel();

    /** When the question went out, ns. */
    long requestedNanos();

    /** When the answer was complete (or given up), ns; never before {@link #requestedNanos()}. */
    long repliedNanos();
}
