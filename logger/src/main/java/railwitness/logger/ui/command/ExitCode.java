package railwitness.logger.ui.command;

/** How a command ends, for scripts. */
final class ExitCode {
    /** Done: fit, or nothing to judge. */
    static final int DONE = 0;
    /** A requirement failed, the run tripped, or a certificate does not say what its session says. */
    static final int NOT_FIT = 1;
    /** Wrong use or bad input. */
    static final int BAD_INPUT = 2;
    /** An instrument or a line did not do its part. */
    static final int INSTRUMENT = 3;
    /** The session file could not be written or read, or is not as it was recorded. */
    static final int STORE = 4;
    /** The program could not go on: no memory left, a part missing, a mistake of its own. Says nothing of any session. */
    static final int MACHINE = 5;

    private ExitCode() {}
}
