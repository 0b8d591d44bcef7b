package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import railwitness.analysis.verdict.Fitness;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.FindingsJson;
import railwitness.logger.reporting.findings.FindingsText;
import railwitness.logger.reporting.findings.SessionFindings;

/** Prints what a session found and says how the command ends. */
final class FindingsPrint {
    private FindingsPrint() {}

    static int of(Path session, PrintWriter out, boolean json) {
        return of(SessionFindings.of(session), out, json, false);
    }

    static int of(SessionFindings findings, PrintWriter out, boolean json, boolean notes) {
        out.print(json ? FindingsJson.of(findings) : FindingsText.of(findings, notes));
        out.flush();
        return exitCode(findings);
    }

    /** A record that was altered says nothing; then what failed, then what tripped. */
    static int exitCode(SessionFindings findings) {
        if (findings.brokenChain()) {
            return ExitCode.STORE;
        }
        boolean unfit = findings.findings().verdict() == Fitness.NOT_FIT || findings.state() == SessionState.TRIPPED;
        return unfit ? ExitCode.NOT_FIT : ExitCode.DONE;
    }
}
