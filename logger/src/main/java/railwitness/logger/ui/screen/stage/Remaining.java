package railwitness.logger.ui.screen.stage;

import java.time.Duration;
import java.util.Optional;

/** How long something still takes, if it goes on as it went so far. */
final class Remaining {
    private static final Duration LEAST_TAKEN = Duration.ofMillis(500);
    private static final double LEAST_SHARE = 0.02;
    private static final long COARSE_ABOVE_S = 20;
    private static final long COARSE_S = 5;

    private Remaining() {}

    /**
     * In whole seconds, in steps of five above twenty, so that it does not flicker; empty while too little is done to
     * tell, and at the end.
     *
     * @param share done, 0 to 1
     */
    static Optional<Duration> of(double share, Duration taken) {
        if (share < LEAST_SHARE || share >= 1 || taken.compareTo(LEAST_TAKEN) < 0) {
            return Optional.empty();
        }
        long seconds = Math.max(1, Math.round(taken.toMillis() / 1000.0 * (1 - share) / share));
        return Optional.of(Duration.ofSeconds(
                seconds > COARSE_ABOVE_S ? (seconds + COARSE_S - 1) / COARSE_S * COARSE_S : seconds));
    }
}
