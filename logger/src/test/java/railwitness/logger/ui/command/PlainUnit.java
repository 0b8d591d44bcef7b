package railwitness.logger.ui.command;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A healthy step-up supply in a few lines, so that hand-written instruments have something to read: two rails of three times
 * the input, less a fixed drop and what its resistance takes, an idle current, and rails that fall within a second when the
 * input goes. Nothing of it comes from the program.
 */
final class PlainUnit {
    static final double RATIO = 3;
    static final double DROP_VOLTS = 0.7;
    static final double RAIL_OHMS = 0.15;
    static final double IDLE_AMPS = 0.3;
    private static final double SOURCE_OHMS = 0.01;
    private static final double FALL_SECONDS = 0.4;

    private final Map<String, Double> amps = new ConcurrentHashMap<>(Map.of("plus", 0.0, "minus", 0.0));
    private final long madeNanos = System.nanoTime();
    private boolean on;
    private double atOffVolts;
    private double changedSeconds;
    volatile double volts;
    volatile double limit;

    synchronized void output(boolean wanted) {
        if (on && !wanted) {
            atOffVolts = railVolts("plus");
        }
        if (on != wanted) {
            changedSeconds = seconds();
        }
        on = wanted;
    }

    synchronized boolean on() {
        return on;
    }

    void load(String rail, double wanted) {
        amps.put(rail, wanted);
    }

    double drawn(String rail) {
        return on() ? amps.get(rail) : 0;
    }

    double inputAmps() {
        return on() ? IDLE_AMPS + RATIO * (amps.get("plus") + amps.get("minus")) * 1.01 : 0;
    }

    double inputVolts() {
        return on() ? volts - SOURCE_OHMS * inputAmps() : 0;
    }

    /** Magnitude, V. */
    synchronized double railVolts(String rail) {
        if (!on) {
            return atOffVolts * Math.exp(-(seconds() - changedSeconds) / FALL_SECONDS);
        }
        return Math.max(0, RATIO * inputVolts() - DROP_VOLTS - RAIL_OHMS * amps.get(rail));
    }

    private double seconds() {
        return (System.nanoTime() - madeNanos) / 1e9;
    }
}
