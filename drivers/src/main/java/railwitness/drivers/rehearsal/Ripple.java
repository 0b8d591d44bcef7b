package railwitness.drivers.rehearsal;

import java.util.stream.IntStream;

/**
 * The alternating part of a rail over one full cycle of the transformer: what the pulses of the rectifier leave on the
 * filter capacitor and its series resistance.
 *
 * @param frequencyHz of the cycle
 * @param samples equally spaced over the cycle, mean nought, V
 */
public record Ripple(double frequencyHz, double[] samples) {
    private static final int SAMPLES = 160;
    private static final double[] COSINE = IntStream.range(0, SAMPLES)
            .mapToDouble(k -> Math.cos(2 * Math.PI * k / SAMPLES))
            .toArray();

    public Ripple {
        if (samples.length != SAMPLES) {
            throw new IllegalArgumentException("ripple must have " + SAMPLES + " samples, not " + samples.length);
        }
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

    /** Peak amplitude of a harmonic of the cycle (1: the cycle's own frequency, 2: twice that), V. */
    public double amplitudeVolts(int harmonic) {
        double cosine = 0;
        double sine = 0;
        int quarter = COSINE.length / 4;
        for (int k = 0; k < samples.length; k++) {
            int angle = harmonic * k % COSINE.length;
            cosine += samples[k] * COSINE[angle];
            sine += samples[k] * COSINE[(angle + 3 * quarter) % COSINE.length];
        }
        return 2 * Math.hypot(cosine, sine) / samples.length;
    }

    /** What a meter of that band reads: every harmonic through one pole at each end, V rms. */
    public double rmsVolts(double lowHz, double highHz) {
        double sum = 0;
        for (int harmonic = 1; harmonic <= samples.length / 4; harmonic++) {
            double hz = harmonic * frequencyHz;
            double passed = amplitudeVolts(harmonic) / Math.hypot(1, hz / highHz) / Math.hypot(1, lowHz / hz);
            sum += passed * passed / 2;
        }
        return Math.sqrt(sum);
    }
}
