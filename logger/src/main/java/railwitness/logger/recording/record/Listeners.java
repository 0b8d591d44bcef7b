package railwitness.logger.recording.record;

import java.util.List;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.store.StepEntry;

/**
 * Several who are told the same, in their order.
 *
 * @param all at least one
 */
public record Listeners(List<RunListener> all) implements RunListener {
    public Listeners {
        all = List.copyOf(all);
    }

    @Override
    public void happened(double atSeconds, SessionEvent event) {
        all.forEach(one -> one.happened(atSeconds, event));
    }

    @Override
    public void swept(PollResult pollResult) {
        all.forEach(one -> one.swept(pollResult));
    }

    @Override
    public void heard(Reading reading) {
        all.forEach(one -> one.heard(reading));
    }

    @Override
    public void began(int index, int of, Step step) {
        all.forEach(one -> one.began(index, of, step));
    }

    @Override
    public void averaging(Step step, boolean settled) {
        all.forEach(one -> one.averaging(step, settled));
    }

    @Override
    public void ended(Step step, StepEntry entry) {
        all.forEach(one -> one.ended(step, entry));
    }
}
