package railwitness.drivers.instrument;

import java.time.Duration;
import java.util.List;

/** What every instrument can do. All calls block and throw LineException. */
public interface Instrument {
    /** The name in the bench sheet. */
    String name();

    /** Answer to {@code *IDN?}, taken when the instrument was set up. */
    Identity identity();

    /** Reads every channel this instrument is given, with the state it is in. Never throws for a silence: that is a Missing. */
    PollResult poll();

    /**
     * What it was asked for at the introduction and does not know, each with what is lost by it and what stands in for it,
     * in words; it is not asked for these again.
     */
    default List<String> lacks() {
        return List.of();
    }

    /** The shortest time in which a question of this session was answered; zero where that is not measured. */
    default Duration quickestAnswer() {
        return Duration.ZERO;
    }

    /**
     * Opens the line anew, where its port went and came back, and makes sure that the same instrument is on it. From the
     * instrument's own thread.
     */
    default void reconnect() {
        // what has no line of its own cannot lose it
    }

    /** Sends the bytes now, over the head of any exchange; never waits, never throws. */
    boolean cutIn(byte[] bytes);
}
