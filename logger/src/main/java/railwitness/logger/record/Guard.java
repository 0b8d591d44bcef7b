package railwitness.logger.record;

import railwitness.safety.guardian.Guardian;

/** Who switches off when this program can not: the guardian process, or on a virtual bench nobody. */
public interface Guard {
    /** Shows that the program runs; several times a second. */
    void beat();

    /** False from the moment on which nobody would switch off. */
    boolean guarding();

    /** How things stand, in words. */
    String words();

    /** The run is over; an output that is not confirmed off is left to the guardian. */
    void over(boolean confirmedOff);

    /** A virtual bench needs none. */
    static Guard none() {
        return new Guard() {
            @Override
            public void beat() {
                // nobody listens
            }

            @Override
            public boolean guarding() {
                return true;
            }

            @Override
            public String words() {
                return "none needed";
            }

            @Override
            public void over(boolean confirmedOff) {
                // nobody is there
            }
        };
    }

    /** A running guardian. */
    static Guard of(Guardian guardian) {
        return new Guard() {
            private Guardian.Standing standing = guardian.standing();

            @Override
            public void beat() {
                standing = guardian.beat();
            }

            @Override
            public boolean guarding() {
                return guardian.isGuarding();
            }

            @Override
            public String words() {
                return standing.words();
            }

            @Override
            public void over(boolean confirmedOff) {
                if (confirmedOff) {
                    guardian.disarm();
                } else {
                    guardian.letFire();
                }
            }
        };
    }
}
