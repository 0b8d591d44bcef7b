package railwitness.drivers.rehearsal;

import java.util.Random;

/**
 * The errors one instrument has this session: gain and offset drawn once, each from all that the stated accuracy allows
 * it; noise anew at each reading. Noise and rounding have their place inside the stated fixed part, as in a data sheet.
 */
public final class Imperfection {
    private static final double NOISE_SHARE = 0.02;
    private static final double MOST_NOISE_SIGMAS = 3;
    private static final double SIGMAS_OF_95_PERCENT = 1.96;

    private final Stated stated;
    private final Random random;
    private final double gain;
    private final double offset;

    public Imperfection(Stated stated, Random random) {
        this.stated = stated;
        this.random = random;
        gain = drawn();
        offset = drawn();
    }

    /** Within -1 to 1 of the stated accuracy, or normal with 95 % of it inside. */
    private double drawn() {
        return stated.normal() ? random.nextGaussian() / SIGMAS_OF_95_PERCENT : 2 * random.nextDouble() - 1;
    }

    /**
     * What the instrument shows.
     *
     * @param value true value
     * @param range full scale of the range in use
     * @param resolution of the last digit; zero for none
     */
    public double shown(double value, double range, double resolution) {
        double fixed = fixed(range);
        double sigmas = Math.max(-MOST_NOISE_SIGMAS, Math.min(MOST_NOISE_SIGMAS, random.nextGaussian()));
        double beside = offset * fixed + sigmas * NOISE_SHARE * fixed;
        double amplified = value * (1 + gain * stated.readingShare());
        if (stated.normal()) {
            return rounded(amplified + beside, resolution);
        }
        double least = amplified - fixed;
        double most = amplified + fixed;
        double shown = rounded(Math.max(least, Math.min(most, amplified + beside)), resolution);
        if (shown > most && fixed > resolution) {
            return shown - resolution;
        }
        return shown < least && fixed > resolution ? shown + resolution : shown;
    }

    private static double rounded(double value, double resolution) {
        return resolution > 0 ? Math.rint(value / resolution) * resolution : value;
    }

    /** What a source gives when told to give that value: the same errors without noise. */
    double given(double setting, double range) {
        return setting * (1 + gain * stated.readingShare()) + offset * fixed(range);
    }

    private double fixed(double range) {
        return stated.rangeShare() * range + stated.offset();
    }
}
