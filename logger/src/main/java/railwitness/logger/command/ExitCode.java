package railwitness.logger.command;

/** How a command ends, for scripts. */
final class ExitCode {
    /** Done: fit, or nothing to judge. */
    static final int DONE = 0;
    /** A requirement failed, the run tripped, or a verification says no. */
    static final int NOT_FIT = 1;
    /** Wrong use or bad input. */
    static final int BAD_INPUT = 2;
    /** An instrument or a line did not do its part. */
    static final int INSTRUMENT = 3;
    /** The session file could not be written or read. */
    static final int STORE = 4;

    private ExitCode() {}
}
