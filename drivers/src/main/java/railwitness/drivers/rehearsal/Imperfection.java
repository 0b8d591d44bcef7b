package railwitness.drivers.rehearsal;

import java.util.Random;

/**
 * The errors one instrument has this session: gain and offset drawn once from within the stated accuracy, noise anew at
 * each reading. Noise and rounding have their place inside the stated accuracy.
 */
final class Imperfection {
    private static final double FIXED_SHARE = 0.9;
    private static final double NOISE_SHARE = 0.02;
    private static final double MOST_NOISE_SIGMAS = 3;
    private static final double SIGMAS_OF_95_PERCENT = 1.96;

    private final Stated stated;
    private final Random random;
    private final double gain;
    private final double offset;

    Imperfection(Stated stated, Random random) {
        this.stated = stated;
        this.random = random;
        gain = drawn();
        offset = drawn();
    }

    /** Within -1 to 1 of the stated accuracy, or normal with 95 % of it inside. */
    private double drawn() {
        return stated.normal()
                ? random.nextGaussian() / SIGMAS_OF_95_PERCENT
                : FIXED_SHARE * (2 * random.nextDouble() - 1);
    }

    /**
     * What the instrument shows.
     *
     * @param value true value
     * @param range full scale of the range in use
     * @param resolution of the last digit; nought for none
     */
    double shown(double value, double range, double resolution) {
        double fixed = stated.rangeShare() * range + stated.offset();
        double sigmas = Math.max(-MOST_NOISE_SIGMAS, Math.min(MOST_NOISE_SIGMAS, random.nextGaussian()));
        double noise = sigmas * NOISE_SHARE * fixed;
        double raw = value * (1 + gain * stated.readingShare()) + offset * fixed + noise;
        return resolution > 0 ? Math.rint(raw / resolution) * resolution : raw;
    }

    /** What a source gives when told to give that value: the same errors without noise. */
    double given(double setting, double range) {
        return setting * (1 + gain * stated.readingShare()) + offset * (stated.rangeShare() * range + stated.offset());
    }
}
