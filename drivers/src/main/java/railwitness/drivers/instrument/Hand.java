package railwitness.drivers.instrument;

import java.util.OptionalDouble;
import java.util.function.Consumer;

/** The person who works the knobs of a supply without a serial line. Asked on the scheduler, and answers there. */
public interface Hand {
    /**
     * Asks for one turn at the knobs.
     *
     * @param shown told what the display then shows; empty where it does not show it
     */
    void turn(KnobTurn turn, Consumer<OptionalDouble> shown);

    /** Asks to switch the output off, until a word says that it is; the mere press of a key is no answer. */
    void switchOff(Runnable isOff);

    /** The output must go off now: says so at once, large and loud. From any thread; never waits, never throws. */
    void offNow();

    /** What was asked is no longer wanted. */
    void forget();
}
