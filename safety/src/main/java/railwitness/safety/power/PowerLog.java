package railwitness.safety.power;

/** Is told every step of power, on the scheduler. Times are ns on the session's axis. */
public interface PowerLog {
    /** One step: {@code what} is a short word of the trade, {@code words} a sentence. */
    void step(long atNanos, String what, String words);

    /** The person must act now: shown large, until {@link #alarmOver}. */
    void alarm(long atNanos, String words);

    /** What the alarm warned of has ended after all. */
    void alarmOver(long atNanos, String words);
}
