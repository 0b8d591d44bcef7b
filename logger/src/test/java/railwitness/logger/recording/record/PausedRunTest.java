package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.findings.SessionFindings;

/** A person pauses with the output off, or wants a step once more, at any moment of a plan; the plan is done all the same. */
class PausedRunTest {
    @TempDir
    Path folder;

    private StoppedSession session(int at, java.util.function.Consumer<Run> act) {
        StoppedSession session = new StoppedSession(at, act);
        session.virtual(file(at));
        return session;
    }

    private Path file(int at) {
        return folder.resolve("at" + at + ".session");
    }

    private static List<String> steps(SessionFindings findings) {
        return findings.steps().stream()
                .filter(step -> step.outcome() == StepOutcome.MEASURED)
                .map(StepEntry::step)
                .toList();
    }

    @Test
    void aPauseAtAnythingThatIsToldChangesNoStepOfThePlan() {
        int all = session(-1, run -> {}).told.size();
        List<String> wanted = steps(SessionFindings.of(file(-1)));
        List<String> wrong = new ArrayList<>();
        int paused = 0;
        for (int at = 2; at <= all; at += 9) {
            StoppedSession session = session(at, Run::pause);
            SessionFindings findings = SessionFindings.of(file(at));
            boolean was = told(findings, EventKind.PAUSED);
            paused += was ? 1 : 0;
            boolean whole = findings.state() == SessionState.COMPLETE
                    && steps(findings).equals(wanted)
                    && Verification.of(file(at)).isIntact()
                    && !session.far.supply("supply").isOn()
                    && was == told(findings, EventKind.GOES_ON)
                    && !told(findings, EventKind.TRIP);
            if (!whole) {
                wrong.add("at " + at + " " + findings.state() + " " + steps(findings) + " " + session.told);
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(paused).isGreaterThan(4);
    }

    /** The output is off from the pause until the person lets the plan go on. */
    @Test
    void theOutputIsOffWhileItIsPaused() {
        StoppedSession session = session(62, Run::pause);
        List<String> told = session.told;
        int paused = indexOf(told, "paused:", 0);
        int off = indexOf(told, "off read back: the supply says off", paused);
        int goesOn = indexOf(told, "goes on:", off);
        int on = indexOf(told, "output on: output on, read back", goesOn);
        assertThat(told.subList(paused, goesOn)).noneMatch(words -> words.startsWith("output on:"));
        assertThat(on).isGreaterThan(goesOn);
    }

    private static int indexOf(List<String> told, String begin, int from) {
        for (int i = from; i < told.size(); i++) {
            if (told.get(i).startsWith(begin)) {
                return i;
            }
        }
        throw new AssertionError("'" + begin + "' is not told after " + from + " in " + told);
    }

    @Test
    void aStopWhileItIsPausedEndsTheSession() {
        int[] at = {0};
        StoppedSession session = new StoppedSession(62, run -> {
            run.pause();
            run.stop("enough");
        });
        session.virtual(file(at[0]));
        SessionFindings findings = SessionFindings.of(file(at[0]));
        assertThat(findings.state()).isEqualTo(SessionState.STOPPED);
        assertThat(session.far.supply("supply").isOn()).isFalse();
        assertThat(told(findings, EventKind.GOES_ON)).isFalse();
    }

    @Test
    void aStepOnceMoreIsTakenFromItsBeginAndCountsOnce() {
        List<String> told = session(-1, run -> {}).told;
        List<String> wanted = steps(SessionFindings.of(file(-1)));
        int repeated = 0;
        for (int at = 1; at <= told.size(); at++) {
            if (!told.get(at - 1).startsWith("averaging")) {
                continue;
            }
            session(at, Run::repeatStep);
            SessionFindings findings = SessionFindings.of(file(at));
            assertThat(findings.state()).as("at " + at).isEqualTo(SessionState.COMPLETE);
            assertThat(steps(findings)).as("at " + at).isEqualTo(wanted);
            repeated += told(findings, EventKind.REPEATED) ? 1 : 0;
        }
        assertThat(repeated).isPositive();
    }

    private static boolean told(SessionFindings findings, EventKind kind) {
        return findings.events().stream().anyMatch((EventEntry event) -> event.is(kind));
    }
}
