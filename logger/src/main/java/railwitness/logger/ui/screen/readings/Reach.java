package railwitness.logger.ui.screen.readings;

/**
 * The stretch of a session that is looked at.
 *
 * @param from s of the session
 * @param to after it
 * @param whole length of the session, s
 */
record Reach(double from, double to, double whole) {
    /** Nothing shorter is looked at, s: readings come no faster. */
    static final double LEAST = 0.005;

    /** All of a session. */
    static Reach all(double whole) {
        double length = Math.max(whole, LEAST);
        return new Reach(0, length, length);
    }

    double length() {
        return to - from;
    }

    boolean isAll() {
        return length() >= whole;
    }

    double middle() {
        return (from + to) / 2;
    }

    /**
     * Nearer or farther, with one moment staying where it is.
     *
     * @param times below 1 nearer, above 1 farther
     */
    Reach zoomed(double times, double about) {
        double length = Math.max(LEAST, Math.min(whole, length() * times));
        double share = (Math.max(from, Math.min(to, about)) - from) / length();
        return at(from + share * (length() - length), length);
    }

    /** Later or earlier by a share of what is seen. */
    Reach moved(double share) {
        return at(from + share * length(), length());
    }

    /** As much as now is seen, with this moment in the middle. */
    Reach around(double seconds) {
        return at(seconds - length() / 2, length());
    }

    private Reach at(double begin, double length) {
        double inside = Math.max(0, Math.min(whole - length, begin));
        return new Reach(inside, inside + length, whole);
    }
}
