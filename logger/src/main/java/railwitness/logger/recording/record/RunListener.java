package railwitness.logger.recording.record;

import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.store.StepEntry;

/** What somebody who watches a run is told, on the scheduler's thread. All calls must return at once. */
public interface RunListener {
    /** Something happened. */
    default void happened(double atSeconds, SessionEvent event) {}

    /** All that one instrument said, after the interlock and the recorder had it. */
    default void swept(PollResult pollResult) {}

    /** A value that no instrument sent: read by a person, or switched by them. */
    default void heard(Reading reading) {}

    /** A step begins. */
    default void began(int index, int of, Step step) {}

    /** A step is averaged from now on. */
    default void averaging(Step step, boolean settled) {}

    /** A step has ended. */
    default void ended(Step step, StepEntry entry) {}
}
