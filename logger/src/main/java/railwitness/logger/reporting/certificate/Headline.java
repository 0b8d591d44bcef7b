package railwitness.logger.reporting.certificate;

import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.verdict.Fitness;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * The one thing that must not be overlooked: how the test ended where it did not end as planned, else the verdict.
 *
 * @param words a few
 * @param more why, a sentence; empty where the words say it all
 * @param fault whether it is set as one
 */
record Headline(String words, String more, boolean fault) {
    static Headline of(SessionFindings session) {
        String after = verdict(session.findings().verdict());
        return switch (session.state()) {
            case TRIPPED ->
                new Headline(
                        "Test stopped by protection"
                                + trip(session).map(event -> at(event.nanos())).orElse(""),
                        trip(session).map(event -> sentence(event.text()) + " ").orElse("") + "Not fit to return.",
                        true);
            case INTERRUPTED ->
                new Headline(
                        "Recording broke off" + at(session.endedNanos()),
                        "The output's state after that was not observed. What was recorded until then: " + after + ".",
                        true);
            case STOPPED ->
                new Headline(
                        after,
                        "A person ended the test" + at(session.endedNanos()) + ", before the plan was done.",
                        session.findings().verdict() == Fitness.NOT_FIT);
            default ->
                new Headline(
                        after,
                        "",
                        session.findings().verdict() == Fitness.NOT_FIT
                                || !session.findings().contradictions().isEmpty());
        };
    }

    private static String verdict(Fitness fitness) {
        return switch (fitness) {
            case FIT -> "Fit to return";
            case NOT_FIT -> "Not fit to return";
            case NOT_JUDGED -> "Not judged";
        };
    }

    private static Optional<EventEntry> trip(SessionFindings session) {
        return session.events().stream()
                .filter(event -> event.is(EventKind.TRIP))
                .findFirst();
    }

    private static String at(long nanos) {
        return String.format(Locale.ROOT, " at %.1f s", nanos / 1e9);
    }

    private static String sentence(String text) {
        String plain = text.strip();
        return plain.isEmpty()
                ? ""
                : Character.toUpperCase(plain.charAt(0)) + plain.substring(1) + (plain.endsWith(".") ? "" : ".");
    }
}
