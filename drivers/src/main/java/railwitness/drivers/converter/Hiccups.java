package railwitness.drivers.converter;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A unit on a source too weak for it starts, pulls the source down, drops out, and starts again some hundred times a
 * second. Once each start is like one before it, whole periods are passed over: the rails go on as they went over the
 * last periods (what a unit pumps up is not lost), the bodies are warmed by the mean of what was lost. After each leap a
 * period is worked out anew.
 */
final class Hiccups {
    /** Two starts are alike when no voltage differs by more, and a leap moves none by more, V (our own measure). */
    private static final double ALIKE_VOLTS = 0.1;

    /** So many periods in a row must be alike; of so many at most the mean is taken. */
    private static final int FEWEST_PERIODS = 4;

    private static final int MOST_PERIODS = 8;
    /** A period has at most so many starts. */
    private static final int LONGEST_PERIOD = 16;
    /** No leap is longer, s: temperatures have moved by then. */
    private static final double LONGEST_LEAP_SECONDS = 2;

    private final List<Start> starts = new ArrayList<>();
    private double seconds;
    private double transformerJoules;
    private double heatsinkJoules;
    private boolean atStart;

    /** What had passed when the unit started from this charge; {@code back} so many starts ago lies one like it, or 0. */
    private record Start(Charge charge, int back, double seconds, double transformerJoules, double heatsinkJoules) {}

    /** @param charge where it ends; watts are means over it */
    record Leap(Charge charge, double seconds, double transformerWatts, double heatsinkWatts) {}

    /** What the unit stands in has changed. */
    void forget() {
        starts.clear();
        atStart = false;
    }

    /** A step was worked out. */
    void passed(double stepSeconds, Losses losses) {
        seconds += stepSeconds;
        transformerJoules += losses.transformer() * stepSeconds;
        heatsinkJoules += losses.heatsink() * stepSeconds;
        atStart = false;
    }

    /** The unit starts from this charge. */
    void started(Charge charge) {
        int back = 0;
        for (int k = 1; k <= Math.min(LONGEST_PERIOD, starts.size()) && back == 0; k++) {
            back = charge.distance(starts.get(starts.size() - k).charge()) < ALIKE_VOLTS ? k : 0;
        }
        starts.add(new Start(charge, back, seconds, transformerJoules, heatsinkJoules));
        if (starts.size() > LONGEST_PERIOD * MOST_PERIODS) {
            starts.remove(0);
        }
        atStart = true;
    }

    /** Whole periods passed over from a start; empty where they are not alike or there is no room for one. */
    Optional<Leap> leap(double atMostSeconds) {
        if (!atStart) {
            return Optional.empty();
        }
        int at = starts.size() - 1;
        int counted = 0;
        while (counted < MOST_PERIODS
                && starts.get(at).back() > 0
                && at >= starts.get(at).back()) {
            at -= starts.get(at).back();
            counted++;
        }
        return counted < FEWEST_PERIODS ? Optional.empty() : leap(starts.get(at), counted, atMostSeconds);
    }

    private Optional<Leap> leap(Start from, int counted, double atMostSeconds) {
        Start to = starts.get(starts.size() - 1);
        double span = to.seconds() - from.seconds();
        double room = Math.min(LONGEST_LEAP_SECONDS, atMostSeconds) / (span / counted) - 1;
        double drift = to.charge().distance(from.charge()) / counted;
        double periods = Math.floor(Math.min(room, ALIKE_VOLTS / Math.max(drift, 1e-9)));
        if (periods < 1) {
            return Optional.empty();
        }
        Charge moved = to.charge().goneOn(from.charge(), to.charge(), periods / counted);
        starts.replaceAll(start -> new Start(
                start.charge().goneOn(from.charge(), to.charge(), periods / counted),
                start.back(),
                start.seconds(),
                start.transformerJoules(),
                start.heatsinkJoules()));
        atStart = false;
        return Optional.of(new Leap(
                moved,
                periods * span / counted,
                (to.transformerJoules() - from.transformerJoules()) / span,
                (to.heatsinkJoules() - from.heatsinkJoules()) / span));
    }
}
