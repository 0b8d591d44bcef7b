package railwitness.analysis.supply;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Band;

/** How much of the ripple a meter's band lets through. Ripple sits at twice the switching frequency and above. */
public enum RippleReach {
    /** The band covers the ripple; what is lost above it is small and goes into the uncertainty. */
    COVERS,
    /** The band ends not far above: the reading may be low, so it can prove a fail, never a pass. */
    LOSES_PART,
    /** The band ends below twice the switching frequency: not measurable with this meter. */
    BELOW,
    /** Band or frequency are not known. */
    UNKNOWN;

    private static final double SMALL_LOSS = 0.10;
    private static final int HARMONICS = 200;

    /** Judges a band against the frequency of the full transformer cycle, Hz. */
    public static RippleReach of(Optional<Band> band, OptionalDouble cycleHz) {
        if (band.isEmpty() || cycleHz.isEmpty()) {
            return UNKNOWN;
        }
        double rippleHz = 2 * cycleHz.getAsDouble();
        if (band.get().highHz() < rippleHz || band.get().lowHz() > rippleHz) {
            return BELOW;
        }
        return lostShare(band.get(), cycleHz.getAsDouble()) <= SMALL_LOSS ? COVERS : LOSES_PART;
    }

    /**
     * Largest share of the rms that a band ending with one pole (-3 dB at its end) loses. The wave taken is the one
     * richest in harmonics that a filter leaves, a saw-tooth at twice the switching frequency (amplitudes as 1/k); a
     * triangle or a sine loses less.
     *
     * @param cycleHz of the full transformer cycle, Hz
     * @return 0 to 1
     */
    public static double lostShare(Band band, double cycleHz) {
        double all = 0;
        double passed = 0;
        for (int harmonic = 1; harmonic <= HARMONICS; harmonic++) {
            double relative = 2 * cycleHz * harmonic / band.highHz();
            double power = 1.0 / ((double) harmonic * harmonic);
            all += power;
            passed += power / (1 + relative * relative);
        }
        return 1 - Math.sqrt(passed / all);
    }
}
