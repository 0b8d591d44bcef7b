package railwitness.logger.recording.record;

import java.util.Optional;
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

    /** False where nothing real could stay on. */
    default boolean needed() {
        return true;
    }

    /** Why nobody switches off when this program can not, where that is so and a person accepted it. */
    default Optional<String> lacking() {
        return Optional.empty();
    }

    /** A virtual bench needs none. */
    static Guard none() {
        return new Nobody("none needed", Optional.empty());
    }

    /**
     * Nobody switches off when this program can not.
     *
     * @param words why, and in which words that was accepted
     */
    static Guard none(String words) {
        return new Nobody(words, Optional.of(words));
    }

    /** No second process. */
    record Nobody(String words, Optional<String> lacking) implements Guard {
        @Override
        public boolean needed() {
            return lacking.isPresent();
        }

        @Override
        public void beat() {
            // nobody listens
        }

        @Override
        public boolean guarding() {
            return true;
        }

        @Override
        public void over(boolean confirmedOff) {
            // nobody is there
        }
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
