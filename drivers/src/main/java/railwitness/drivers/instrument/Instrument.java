package railwitness.drivers.instrument;

/** What every instrument can do. All calls block and throw LineException. */
public interface Instrument {
    /** The name in the bench sheet. */
    String name();

    /** Answer to {@code *IDN?}, taken when the instrument was set up. */
    Identity identity();

    /** Reads every channel this instrument is given, with the state it is in. Never throws for a silence: that is a Missing. */
    Sweep poll();

    /** Sends the bytes now, over the head of any exchange; never waits, never throws. */
    boolean cutIn(byte[] bytes);
}
