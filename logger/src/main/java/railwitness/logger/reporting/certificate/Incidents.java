package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.Comparator;
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

    private record Dated(long nanos, Incident incident) {}

    /** Everything in the order of time; what is of no one moment first. */
    List<Incident> all() {
        List<Dated> all = new ArrayList<>();
        state(all);
        for (StepEntry step : evidence.session().steps()) {
            String name = step.stage() + ", " + step.step();
            if (step.outcome() != StepOutcome.MEASURED) {
                all.add(new Dated(
                        step.beginNanos(),
                        new Incident(seconds(step.beginNanos()), step.outcome().words(), name + ": " + step.reason())));
            } else if (!step.settled()) {
                all.add(new Dated(
                        step.beginNanos(),
                        new Incident(
                                seconds(step.beginNanos()),
                                "not settled",
                                name + ": averaged when its time was over")));
            }
        }
        evidence.tally()
                .lost()
                .forEach((channel, count) -> all.add(new Dated(
                        Long.MIN_VALUE,
                        new Incident(
                                "",
                                "readings lacking",
                                channel + ": " + count + " did not come or were out of range"))));
        evidence.session().outOfTheOrdinary().forEach(event -> all.add(new Dated(event.nanos(), incident(event))));
        evidence.notes()
                .forEach(note -> all.add(new Dated(
                        note.nanos(),
                        new Incident(
                                seconds(note.nanos()),
                                "note",
                                note.text() + (note.author().isEmpty() ? "" : " (" + note.author() + ")")))));
        return all.stream()
                .sorted(Comparator.comparingLong(Dated::nanos))
                .map(Dated::incident)
                .toList();
    }

    private void state(List<Dated> all) {
        SessionState state = evidence.session().state();
        if (state != SessionState.COMPLETE) {
            long end = evidence.session().endedNanos();
            all.add(new Dated(
                    end,
                    new Incident(
                            seconds(end),
                            state.word(),
                            switch (state) {
                                case INTERRUPTED ->
                                    "the recording broke off and was never brought to its end; the output's state after"
                                            + " that was not observed";
                                case STOPPED -> "a person ended the session before the plan was done";
                                case TRIPPED -> "the protection switched the supply off";
                                default -> "";
                            })));
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
            return (evidence.wasRun()
                            ? "None out of the ordinary: no trip, no gap, no note."
                            : "Not known: the readings were brought in.")
                    + readings;
        }
        Incident first = all.stream()
                .filter(one -> one.what().equals("trip"))
                .findFirst()
                .orElse(all.get(0));
        String words = first.what() + ": " + first.text();
        return all.size() + (all.size() == 1 ? " entry" : " entries") + ", told inside. "
                + (all.get(0).equals(first) ? "First: " : "Above all: ")
                + words
                + (words.endsWith(".") ? "" : ".") + readings;
    }

    private static String thousands(long count) {
        return String.format(Locale.ROOT, "%,d", count).replace(',', ' ');
    }
}
