package railwitness.logger.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.record.RunListener;

/** Lets the trouble begin at its moment, and hears what the person is told. */
final class CaseListener implements RunListener {
    private final FaultCase what;
    private final VirtualBench far;
    private final Scheduler scheduler;
    private final List<String> told = new ArrayList<>();
    private final OwnAnswers own;
    private boolean begun;

    CaseListener(FaultCase what, VirtualBench far, BenchSheet bench, Scheduler scheduler) {
        this.what = what;
        this.far = far;
        this.scheduler = scheduler;
        own = new OwnAnswers(far, bench);
    }

    /** Readings that are no answer of their instrument to their question, and how many were looked at. */
    OwnAnswers own() {
        return own;
    }

    @Override
    public void swept(PollResult pollResult) {
        for (Reading reading : pollResult.readings()) {
            if (reading instanceof Measured measured) {
                own.check(measured, !begun);
            }
        }
    }

    /** Everything that was said, in its order. */
    List<String> told() {
        return List.copyOf(told);
    }

    /** Whether the person was told in words that the output may be on and what to do. */
    boolean toldToOpen() {
        return told.stream()
                .anyMatch(words -> words.startsWith("ALARM")
                        && words.contains("could not be switched off")
                        && words.contains("open the disconnect"));
    }

    private void now(String event, String text) {
        Optional<Moment> moment = Moment.of(event, text);
        if (!begun && moment.isPresent() && moment.get() == what.moment()) {
            begun = true;
            what.begin(far, scheduler.nowNanos());
        }
    }

    @Override
    public void happened(double atSeconds, SessionEvent event) {
        told.add(event.what() + ": " + event.words());
        now(event.what(), event.words());
    }

    @Override
    public void began(int index, int of, Step step) {
        now("step " + step.stage(), "");
    }

    @Override
    public void averaging(Step step, boolean settled) {
        now("averaging " + step.stage(), "");
    }
}
