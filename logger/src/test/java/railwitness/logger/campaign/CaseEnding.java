package railwitness.logger.campaign;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.findings.FindingsText;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * How a session with a trouble in it ended.
 *
 * @param state as the file has it; empty when the file cannot be read
 * @param offAtFarEnd what the virtual supply knows of itself
 * @param told the person was told to open the disconnect
 * @param faults what is wrong with this ending, apart from an output that is on without a word; empty when nothing is
 * @param words what was said meanwhile
 * @param checked how many readings were looked at, each in its instrument's own answers
 * @param old how many of them were the answer to the same question of the round before
 * @param foreign readings that belong to another question or another time
 */
record CaseEnding(
        FaultCase what,
        Optional<SessionState> state,
        boolean offAtFarEnd,
        boolean told,
        List<String> faults,
        List<String> words,
        long checked,
        long old,
        List<String> foreign) {
    private static final Set<String> REASONS = Set.of("trip", "stop", "no bench", "no power");

    static CaseEnding of(FaultCase what, Path file, boolean off, CaseListener heard) {
        try {
            SessionFindings findings = SessionFindings.of(file);
            return new CaseEnding(
                    what,
                    Optional.of(findings.state()),
                    off,
                    heard.toldToOpen(),
                    faults(what, file, findings, heard.toldToOpen()),
                    heard.told(),
                    heard.own().checked(),
                    heard.own().old(),
                    heard.own().foreign());
        } catch (RuntimeException lost) {
            return new CaseEnding(
                    what,
                    Optional.empty(),
                    off,
                    heard.toldToOpen(),
                    List.of("lost: " + lost),
                    heard.told(),
                    heard.own().checked(),
                    heard.own().old(),
                    heard.own().foreign());
        }
    }

    private static List<String> faults(FaultCase what, Path file, SessionFindings findings, boolean told) {
        List<String> faults = new java.util.ArrayList<>(TruePoints.against(what, findings));
        Verification verification = Verification.of(file);
        if (!verification.isIntact()) {
            faults.add(verification.words());
        }
        if (findings.state() != SessionState.COMPLETE && !hasEvent(findings, REASONS)) {
            faults.add("no event says why it ended");
        }
        if (findings.state() == SessionState.COMPLETE && !hasEvent(findings, Set.of("end"))) {
            faults.add("complete without an end");
        }
        if (findings.state() == SessionState.INTERRUPTED || findings.state() == SessionState.RUNNING) {
            faults.add("left unfinished");
        }
        if (told && !FindingsText.of(findings).contains("open the disconnect")) {
            faults.add("the findings do not have the alarm");
        }
        return faults;
    }

    private static boolean hasEvent(SessionFindings findings, Set<String> any) {
        return findings.events().stream().map(EventEntry::what).anyMatch(any::contains);
    }

    /** The same with one more thing that is wrong. */
    CaseEnding with(String fault) {
        List<String> more = new java.util.ArrayList<>(faults);
        more.add(fault);
        return new CaseEnding(what, state, offAtFarEnd, told, more, words, checked, old, foreign);
    }

    boolean safe() {
        return offAtFarEnd || told;
    }

    boolean kept() {
        return faults.isEmpty();
    }

    boolean hadPower() {
        return words.stream().anyMatch(word -> word.startsWith("output on: output on"));
    }

    boolean is(SessionState wanted) {
        return state.filter(found -> found == wanted).isPresent();
    }
}
