package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;

/** What departed from the plan, and what happened out of the ordinary. */
final class Incidents {
    /**
     * One thing that happened.
     *
     * @param when seconds of the session, or empty text where it is of no one moment
     */
    record Incident(String when, String what, String text) {}

    private final Evidence evidence;

    Incidents(Evidence evidence) {
        this.evidence = evidence;
    }

    /** Everything, in the order of print. */
    List<Incident> all() {
        List<Incident> all = new ArrayList<>();
        state(all);
        for (StepEntry step : evidence.session().steps()) {
            String name = step.stage() + ", " + step.step();
            if (step.outcome() != StepOutcome.MEASURED) {
                all.add(new Incident(seconds(step.beginNanos()), step.outcome().words(), name + ": " + step.reason()));
            } else if (!step.settled()) {
                all.add(new Incident(
                        seconds(step.beginNanos()), "not settled", name + ": averaged when its time was over"));
            }
        }
        evidence.tally()
                .lost()
                .forEach((channel, count) -> all.add(new Incident(
                        "", "readings lacking", channel + ": " + count + " did not come or were out of range")));
        evidence.session().outOfTheOrdinary().forEach(event -> all.add(incident(event)));
        evidence.notes()
                .forEach(note -> all.add(new Incident(
                        seconds(note.nanos()),
                        "note",
                        note.text() + (note.author().isEmpty() ? "" : " (" + note.author() + ")"))));
        return all;
    }

    private void state(List<Incident> all) {
        SessionState state = evidence.session().state();
        if (state != SessionState.COMPLETE) {
            all.add(new Incident(
                    seconds(evidence.session().endedNanos()),
                    state.word(),
                    switch (state) {
                        case INTERRUPTED -> "the recording broke off and was never brought to its end";
                        case STOPPED -> "a person ended the session before the plan was done";
                        case TRIPPED -> "the interlock switched the supply off";
                        default -> "";
                    }));
        }
    }

    private static Incident incident(EventEntry event) {
        return new Incident(seconds(event.nanos()), event.what().toLowerCase(Locale.ROOT), event.text());
    }

    private static String seconds(long nanos) {
        return String.format(Locale.ROOT, "%.1f", nanos / 1e9);
    }

    /** For the first page: counts, and the first of them in words. */
    String inShort() {
        List<Incident> all = all();
        String readings = " " + thousands(evidence.tally().readings()) + " readings.";
        if (all.isEmpty()) {
            return "None out of the ordinary: no trip, no gap, no note." + readings;
        }
        Incident first = all.get(0);
        String words = first.what() + ": " + first.text();
        return all.size() + (all.size() == 1 ? " entry" : " entries") + ", told inside. First: " + words
                + (words.endsWith(".") ? "" : ".") + readings;
    }

    private static String thousands(long count) {
        return String.format(Locale.ROOT, "%,d", count).replace(',', ' ');
    }
}
