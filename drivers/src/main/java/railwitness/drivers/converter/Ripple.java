package railwitness.drivers.converter;

import java.util.stream.IntStream;

/**
 * The alternating part of a rail over one full cycle of the transformer: what the pulses of the rectifier leave on the
 * filter capacitor and its series resistance.
 *
 * @param frequencyHz of the cycle
 * @param samples equally spaced over the cycle, mean zero, V
 */
public record Ripple(double frequencyHz, double[] samples) {
    private static final int SAMPLES = 160;
    private static final int HARMONICS = SAMPLES / 4;
    private static final double[][] COSINES = table(0);
    private static final double[][] SINES = table(0.25);

    public Ripple {
        if (samples.length != SAMPLES) {
            throw new IllegalArgumentException("ripple must have " + SAMPLES + " samples, not " + samples.length);
        }
    }

    /** A row for each harmonic: the waves are asked for at every reading, so they are worked out once. */
    private static double[][] table(double lateCycles) {
        return IntStream.rangeClosed(0, HARMONICS)
                .mapToObj(harmonic -> IntStream.range(0, SAMPLES)
                        .mapToDouble(k -> Math.cos(2 * Math.PI * ((double) harmonic * k / SAMPLES - lateCycles)))
                        .toArray())
                .toArray(double[][]::new);
    }

    /** No ripple: the unit does not run. */
    static Ripple none(double frequencyHz) {
        return new Ripple(frequencyHz, new double[SAMPLES]);
    }

    /** From the rectified current: v = ESR (i - mean) + 1/C times the charge that is in excess. */
    static Ripple of(double[] rectifiedAmps, double capacitorFarad, double esrOhm, double frequencyHz) {
        int n = rectifiedAmps.length;
        double meanAmps = mean(rectifiedAmps);
        double[] volts = new double[n];
        double charge = 0;
        double step = 1 / frequencyHz / n;
        for (int k = 0; k < n; k++) {
            double excess = rectifiedAmps[k] - meanAmps;
            volts[k] = esrOhm * excess + (charge + excess * step / 2) / capacitorFarad;
            charge += excess * step;
        }
        double meanVolts = mean(volts);
        for (int k = 0; k < n; k++) {
            volts[k] -= meanVolts;
        }
        return new Ripple(frequencyHz, volts);
    }

    static int sampleCount() {
        return SAMPLES;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    /** Root of the mean square without any band limit, V. */
    public double rmsVolts() {
        double sum = 0;
        for (double sample : samples) {
            sum += sample * sample;
        }
        return Math.sqrt(sum / samples.length);
    }

    /** Highest less lowest, V. */
    public double peakToPeakVolts() {
        double low = 0;
        double high = 0;
        for (double sample : samples) {
            low = Math.min(low, sample);
            high = Math.max(high, sample);
        }
        return high - low;
    }

    /**
     * Peak amplitude of a harmonic of the cycle (1: the cycle's own frequency, 2: twice that), V.
     *
     * @param harmonic 1 to 40
     */
    public double amplitudeVolts(int harmonic) {
        double[] cosines = COSINES[harmonic];
        double[] sines = SINES[harmonic];
        double cosine = 0;
        double sine = 0;
        for (int k = 0; k < SAMPLES; k++) {
            cosine += samples[k] * cosines[k];
            sine += samples[k] * sines[k];
        }
        return 2 * Math.hypot(cosine, sine) / SAMPLES;
    }

    /** What a meter of that band reads: every harmonic through one pole at each end, V rms. */
    public double rmsVolts(double lowHz, double highHz) {
        double sum = 0;
        for (int harmonic = 1; harmonic <= HARMONICS; harmonic++) {
            double hz = harmonic * frequencyHz;
            double passed = amplitudeVolts(harmonic) / Math.hypot(1, hz / highHz) / Math.hypot(1, lowHz / hz);
            sum += passed * passed / 2;
        }
        return Math.sqrt(sum);
    }
}
