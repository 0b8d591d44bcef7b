package railwitness.drivers.converter;

/**
 * What a sound unit has none of. Zero stands for sound; SI units.
 *
 * @param overlapSeconds how long a switch carries current and voltage at once at both its edges together: weak drive
 * @param recoverySeconds how long a rectifier goes on conducting backwards
 * @param clampOhm across the clamp of the drains, conducting while the other side is on; 0 for none
 * @param hotJointOhm a joint before the centre tap adds this by the time the heat sink has 60 degC; it begins at 35 degC
 * @param runawayWatts leak of the switches at 25 degC, W; it doubles every 10 K, as a junction's leakage does (textbook rule)
 * @param shortOhm a path across the first rail that closes once the load draws {@link #SHORT_FROM_AMPS}; 0 for none
 * @param stopAmps input current at which the unit's own protection stops it for {@link #REST_SECONDS}; 0 for none
 */
public record Flaws(
        double overlapSeconds,
        double recoverySeconds,
        double clampOhm,
        double hotJointOhm,
        double runawayWatts,
        double shortOhm,
        double stopAmps) {

    /** Nothing of all this. */
    public static final Flaws NONE = new Flaws(0, 0, 0, 0, 0, 0, 0);

    /** Load at which a short that waits for load closes, A. */
    public static final double SHORT_FROM_AMPS = 1;

    /** After a stop by its own protection the unit stays off for this long, s (common practice, no source). */
    public static final double REST_SECONDS = 0.2;

    private static final double JOINT_COLD_DEGC = 35;
    private static final double JOINT_HOT_DEGC = 60;
    private static final double MOST_DOUBLINGS = 8;

    Flaws withOverlap(double seconds) {
        return new Flaws(seconds, recoverySeconds, clampOhm, hotJointOhm, runawayWatts, shortOhm, stopAmps);
    }

    Flaws withRecovery(double seconds) {
        return new Flaws(overlapSeconds, seconds, clampOhm, hotJointOhm, runawayWatts, shortOhm, stopAmps);
    }

    Flaws withClamp(double ohm) {
        return new Flaws(overlapSeconds, recoverySeconds, ohm, hotJointOhm, runawayWatts, shortOhm, stopAmps);
    }

    Flaws withHotJoint(double ohm) {
        return new Flaws(overlapSeconds, recoverySeconds, clampOhm, ohm, runawayWatts, shortOhm, stopAmps);
    }

    Flaws withRunaway(double watts) {
        return new Flaws(overlapSeconds, recoverySeconds, clampOhm, hotJointOhm, watts, shortOhm, stopAmps);
    }

    Flaws withShort(double ohm) {
        return new Flaws(overlapSeconds, recoverySeconds, clampOhm, hotJointOhm, runawayWatts, ohm, stopAmps);
    }

    Flaws withStop(double amps) {
        return new Flaws(overlapSeconds, recoverySeconds, clampOhm, hotJointOhm, runawayWatts, shortOhm, amps);
    }

    /** Whether the unit's own protection stops it at this input current. */
    boolean stops(double inputAmps) {
        return stopAmps > 0 && inputAmps > stopAmps;
    }

    /** What the joint has in series at that temperature of the heat sink, ohm. */
    double jointOhm(double heatsinkDegC) {
        double share = (heatsinkDegC - JOINT_COLD_DEGC) / (JOINT_HOT_DEGC - JOINT_COLD_DEGC);
        return hotJointOhm * Math.max(0, Math.min(4, share));
    }

    /** Leak at that temperature of the heat sink, W. */
    double leakWatts(double heatsinkDegC) {
        return runawayWatts * Math.pow(2, Math.min(MOST_DOUBLINGS, (heatsinkDegC - 25) / 10));
    }

    /** Current through the short of the first rail, A. */
    double shortAmps(int rail, double railVolts, double loadAmps) {
        return shortOhm > 0 && rail == 0 && loadAmps >= SHORT_FROM_AMPS ? Math.max(0, railVolts) / shortOhm : 0;
    }

    /**
     * Power that hard switching takes while the switches conduct so much: half of voltage times current for the time of
     * both edges (textbook, such as Mohan, Undeland and Robbins, Power Electronics, chapter 2); an open switch sees twice
     * the input.
     */
    double overlapWatts(double inputVolts, double meanAmps, double duty, double hertz) {
        return duty > 0 ? inputVolts * meanAmps / duty * overlapSeconds * hertz : 0;
    }

    /** Power of the recovery of a rail's diodes: charge of half the current for that time, against twice the rail. */
    double recoveryWatts(double railVolts, double railAmps, double hertz) {
        return 2 * hertz * Math.max(0, railVolts) * Math.max(0, railAmps) * recoverySeconds;
    }

    /** Current of the clamp, A: the drain stands at twice the input while the other side is on. */
    double clampAmps(double inputVolts, double duty) {
        return clampOhm > 0 ? 2 * duty * Math.max(0, inputVolts) / clampOhm : 0;
    }
}
