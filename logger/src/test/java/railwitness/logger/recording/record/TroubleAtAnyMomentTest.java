package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.findings.SessionFindings;

/** A file that takes no more, and a mistake in the program, at moments all over a run: off, kept, said why. */
class TroubleAtAnyMomentTest {
    private static final int EVERY = 5;

    @TempDir
    Path folder;

    private final List<String> wrong = new ArrayList<>();

    @Test
    void aWriterThatFails() {
        StoreException full = new StoreException("the disk is full", null);
        for (int at = 1; at < 80; at += EVERY) {
            StoppedSession session = new StoppedSession(at, run -> run.storeTrouble(full));
            session.virtual(file(at));
            check(at, session, "the disk is full");
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void aMistakeInTheProgram() {
        for (int at = 1; at < 80; at += EVERY) {
            StoppedSession session = new StoppedSession(at, run -> {
                throw new IllegalStateException("made for the test");
            });
            String thrown = "";
            try {
                session.virtual(file(at));
            } catch (IllegalStateException e) {
                thrown = e.getMessage();
            }
            if (session.told.size() >= at && !thrown.equals("made for the test")) {
                wrong.add("at " + at + " it was swallowed: " + thrown);
            }
            check(at, session, "a mistake in the program ended the run");
        }
        assertThat(wrong).isEmpty();
    }

    private Path file(int at) {
        return folder.resolve("at" + at + ".session");
    }

    private void check(int at, StoppedSession session, String why) {
        SessionFindings findings = SessionFindings.of(file(at));
        if (session.far.supply("supply").isOn()) {
            wrong.add("at " + at + " it is on " + session.told);
        }
        if (!Verification.of(file(at)).isIntact()) {
            wrong.add("at " + at + " it is not kept whole");
        }
        boolean begun = session.session.running().isPresent();
        boolean ended = session.told.stream().anyMatch(words -> words.startsWith("end:"));
        if (begun && !ended && findings.state() != SessionState.TRIPPED) {
            wrong.add("at " + at + " it ends as " + findings.state());
        }
        if (begun && !ended && session.told.stream().noneMatch(words -> words.contains(why))) {
            wrong.add("at " + at + " it does not say why " + session.told);
        }
    }
}
