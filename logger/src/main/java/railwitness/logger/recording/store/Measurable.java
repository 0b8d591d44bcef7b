package railwitness.logger.recording.store;

/** What a number can be that somebody measured: a file from anywhere may hold others. */
final class Measurable {
    /** Beyond any quantity a bench can show, in any unit, and small enough that sums and squares stay numbers. */
    private static final double MOST = 1e15;

    private Measurable() {}

    /** False for a number beyond all measuring, an infinite one and none at all. */
    static boolean holds(double value) {
        return Math.abs(value) <= MOST;
    }
}
