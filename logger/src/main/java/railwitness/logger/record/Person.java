package railwitness.logger.record;

import java.util.OptionalDouble;
import java.util.function.Consumer;

/** The person at the bench, as the run knows them. Answers come back on the agenda. */
public interface Person {
    /** Asks for one action of the hand, such as switching a load bank; {@code done} when they say it is done. */
    void act(String sentence, Runnable done);

    /** Asks for a number read by eye; empty when they have none. */
    void read(String sentence, Consumer<OptionalDouble> value);
}
