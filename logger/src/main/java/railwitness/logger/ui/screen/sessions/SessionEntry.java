package railwitness.logger.ui.screen.sessions;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.verdict.Fitness;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.widgets.Trouble;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * One file of the list.
 *
 * @param head empty where it cannot be read
 * @param verdict empty until it was worked out
 * @param trouble why it cannot be read, or has no verdict
 */
record SessionEntry(
        Path file, Optional<SessionHead> head, SessionState state, Optional<Fitness> verdict, String trouble) {
    static SessionEntry read(Path file) {
        try (SessionFile session = SessionFile.open(file)) {
            return new SessionEntry(file, Optional.of(session.head()), session.state(), Optional.empty(), "");
        } catch (RuntimeException e) {
            return new SessionEntry(
                    file, Optional.empty(), SessionState.INTERRUPTED, Optional.empty(), Trouble.words(e));
        }
    }

    /** Whether its verdict is still to be worked out. */
    boolean toBeJudged() {
        return head.isPresent() && verdict.isEmpty() && trouble.isEmpty();
    }

    SessionEntry judged() {
        try {
            Fitness fitness = verdict(file);
            return new SessionEntry(file, head, state, Optional.of(fitness), trouble);
        } catch (RuntimeException e) {
            return new SessionEntry(file, head, state, Optional.empty(), Trouble.words(e));
        }
    }

    private static Fitness verdict(Path session) {
        try (SessionFile opened = SessionFile.open(session)) {
            return SessionFindings.judged(opened).findings().verdict();
        }
    }

    /** The same with what an earlier look worked out; a session that has ended does not change any more. */
    SessionEntry knowing(SessionEntry before) {
        boolean same =
                state.isEnding() && before.state() == state && before.head().equals(head);
        return same ? new SessionEntry(file, head, state, before.verdict(), before.trouble()) : this;
    }

    /** How it ended, whether it was a rehearsal, and its verdict, in the words of the list. */
    private String kind() {
        return Words.of("sessions.state." + state.name())
                + (head.filter(SessionHead::rehearsal).isPresent() ? " " + Words.of("sessions.rehearsal") : "")
                + verdict.map(found -> " " + Words.of("fitness.short." + found.name()))
                        .orElse("");
    }

    /** Whether it has all these words in its unit's name, serial number, condition, file name, or kind. */
    boolean has(String words) {
        String all = (head.map(h -> h.unitName() + " " + h.unitSerial() + " " + h.unitCondition())
                                .orElse("")
                        + " " + file.getFileName() + " " + kind())
                .toLowerCase(Locale.ROOT);
        for (String word : words.toLowerCase(Locale.ROOT).split("\\s+")) {
            if (!all.contains(word)) {
                return false;
            }
        }
        return true;
    }
}
