package railwitness.drivers.instrument;

import java.util.function.Consumer;

/** Lets a request on its own thread wait for what happens on the scheduler. */
public interface HandWait {
    /**
     * @param begin begun on the scheduler, or while it stands still; told by what the waiting ends
     * @throws railwitness.drivers.line.LineException when the station is closed meanwhile
     */
    <T> T await(Consumer<Consumer<T>> begin);

    /** Done on the scheduler, soon. From any thread. */
    void post(Runnable task);
}
