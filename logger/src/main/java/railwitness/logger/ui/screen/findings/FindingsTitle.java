package railwitness.logger.ui.screen.findings;

import java.util.ArrayList;
import java.util.List;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/** What stands above the findings. */
final class FindingsTitle {
    private FindingsTitle() {}

    static String title(SessionFindings found) {
        SessionHead head = found.head();
        return head.unitSerial().isEmpty()
                ? head.unitName()
                : Words.of("unit.serial", head.unitName(), head.unitSerial());
    }

    static String caption(SessionFindings found) {
        List<String> parts = new ArrayList<>();
        if (found.head().rehearsal()) {
            parts.add(Words.of("findings.rehearsal"));
        }
        List<Verdict> verdicts = found.findings().verdicts();
        if (verdicts.isEmpty()) {
            parts.add(Words.of("findings.nothing"));
        } else {
            parts.add(Words.of("findings.met", FindingsStage.count(verdicts, Outcome.PASS), verdicts.size()));
            count(parts, verdicts, Outcome.CONDITIONAL_PASS);
            count(parts, verdicts, Outcome.CONDITIONAL_FAIL);
            count(parts, verdicts, Outcome.FAIL);
            count(parts, verdicts, Outcome.NOT_JUDGED);
        }
        parts.add(Numbers.moment(found.head().startedWall(), found.head().zone()));
        return String.join(" \u00b7 ", parts);
    }

    private static void count(List<String> parts, List<Verdict> verdicts, Outcome outcome) {
        long count = FindingsStage.count(verdicts, outcome);
        if (count > 0) {
            parts.add(Words.of("findings.count", count, Words.of("verdict." + outcome.name())));
        }
    }

    /** Why the run ended before its plan did; empty when it did not. */
    static String ending(SessionFindings found) {
        if (found.state() == SessionState.COMPLETE) {
            return "";
        }
        String why = found.events().stream()
                .filter(event -> event.is(EventKind.TRIP) || event.is(EventKind.STOP))
                .map(event -> event.text())
                .reduce((first, last) -> last)
                .orElse("");
        return Words.of("state." + found.state().name()) + (why.isEmpty() ? "" : ": " + why);
    }
}
