package railwitness.analysis.supply;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.hipparchus.complex.Complex;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Term;

/**
 * What a rail's waveform says of its ripple; its mean is taken off first.
 *
 * @param peakToPeak highest minus lowest sample, V
 * @param rms V
 * @param atCycleVolts amplitude of the line at the switching frequency itself, V; empty where that is not known
 * @param atTwiceVolts amplitude at twice it, V
 * @param bandwidthHz in which the waveform was taken, -3 dB; empty where not stated
 * @param spectrum of the whole
 */
public record RippleWaveform(
        Estimate peakToPeak,
        Estimate rms,
        OptionalDouble atCycleVolts,
        OptionalDouble atTwiceVolts,
        OptionalDouble bandwidthHz,
        Spectrum spectrum) {

    /**
     * Amplitudes by frequency, Hann window.
     *
     * @param stepHz distance of two lines
     * @param amplitudeVolts of line i at {@code i * stepHz}, V
     */
    public record Spectrum(double stepHz, double[] amplitudeVolts) {

        /** One line. */
        public record Peak(double hertz, double volts) {}

        /** The largest lines that stand above both their neighbours, largest first. */
        public List<Peak> peaks(int most) {
            return IntStream.range(1, amplitudeVolts.length - 1)
                    .filter(line -> amplitudeVolts[line] > amplitudeVolts[line - 1]
                            && amplitudeVolts[line] >= amplitudeVolts[line + 1])
                    .mapToObj(line -> new Peak(line * stepHz, amplitudeVolts[line]))
                    .sorted(Comparator.comparingDouble(Peak::volts).reversed())
                    .limit(most)
                    .toList();
        }

        /** Frequency of the largest line above a frequency, Hz. */
        public double strongestAboveHz(double lowestHz) {
            int strongest = Math.max(1, (int) Math.ceil(lowestHz / stepHz));
            for (int line = strongest; line < amplitudeVolts.length; line++) {
                strongest = amplitudeVolts[line] > amplitudeVolts[strongest] ? line : strongest;
            }
            return strongest * stepHz;
        }
    }

    /**
     * Works a waveform out.
     *
     * @param volts samples, 16 or more
     * @param stepSeconds distance of two samples, above 0
     * @param cycleHz frequency of the full transformer cycle
     * @param bandwidthHz in which it was taken
     * @param gain relative error of the scope, if its accuracy is stated (sensitivity 1 per volt)
     */
    public static RippleWaveform of(
            double[] volts,
            double stepSeconds,
            OptionalDouble cycleHz,
            OptionalDouble bandwidthHz,
            Optional<Term> gain) {
        if (volts.length < 16) {
            throw new IllegalArgumentException("a waveform of " + volts.length + " samples must have 16 or more");
        }
        if (!(stepSeconds > 0)) {
            throw new IllegalArgumentException("sample distance " + stepSeconds + " s must be above 0");
        }
        double[] ripple = withoutMean(volts);
        return new RippleWaveform(
                estimate(range(ripple), gain),
                estimate(rms(ripple), gain),
                line(ripple, stepSeconds, cycleHz, 1),
                line(ripple, stepSeconds, cycleHz, 2),
                bandwidthHz,
                spectrum(ripple, stepSeconds));
    }

    /** Bandwidth in words. */
    String at() {
        return bandwidthHz.isPresent()
                ? String.format(Locale.ROOT, "full load, waveform in %.3g MHz", bandwidthHz.getAsDouble() / 1e6)
                : "full load, waveform, bandwidth not stated";
    }

    /**
     * Share of the two lines' rms that lies at the switching frequency itself: 0 where every pulse is alike, near 1 where
     * every other one is missing.
     */
    public OptionalDouble shareAtCycle() {
        if (atCycleVolts.isEmpty() || atTwiceVolts.isEmpty()) {
            return OptionalDouble.empty();
        }
        double both = Math.hypot(atCycleVolts.getAsDouble(), atTwiceVolts.getAsDouble());
        return both == 0 ? OptionalDouble.empty() : OptionalDouble.of(atCycleVolts.getAsDouble() / both);
    }

    private static Estimate estimate(double value, Optional<Term> gain) {
        return gain.map(term -> Estimate.of(value, new Term(term.influence(), term.coefficient() * value)))
                .orElseGet(() -> Estimate.exact(value).scatterOnly());
    }

    private static double[] withoutMean(double[] volts) {
        double mean = java.util.Arrays.stream(volts).average().orElseThrow();
        return java.util.Arrays.stream(volts).map(value -> value - mean).toArray();
    }

    private static double range(double[] ripple) {
        var summary = java.util.Arrays.stream(ripple).summaryStatistics();
        return summary.getMax() - summary.getMin();
    }

    private static double rms(double[] ripple) {
        return Math.sqrt(java.util.Arrays.stream(ripple)
                .map(value -> value * value)
                .average()
                .orElseThrow());
    }

    /** Amplitude at a multiple of the cycle, by projection over a whole number of cycles. */
    private static OptionalDouble line(double[] ripple, double step, OptionalDouble cycleHz, int multiple) {
        if (cycleHz.isEmpty() || cycleHz.getAsDouble() * ripple.length * step < 1) {
            return OptionalDouble.empty();
        }
        double cycle = cycleHz.getAsDouble();
        int samples = (int) Math.round(Math.floor(cycle * ripple.length * step + 1e-6) / cycle / step);
        double cosine = 0;
        double sine = 0;
        for (int i = 0; i < samples; i++) {
            double phase = 2 * Math.PI * multiple * cycle * i * step;
            cosine += ripple[i] * Math.cos(phase);
            sine += ripple[i] * Math.sin(phase);
        }
        return OptionalDouble.of(2 * Math.hypot(cosine, sine) / samples);
    }

    private static Spectrum spectrum(double[] ripple, double step) {
        int size = Integer.highestOneBit(ripple.length - 1) * 2;
        double[] windowed = new double[size];
        for (int i = 0; i < ripple.length; i++) {
            windowed[i] = ripple[i] * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / ripple.length));
        }
        Complex[] lines =
                new FastFourierTransformer(DftNormalization.STANDARD).transform(windowed, TransformType.FORWARD);
        double[] amplitudes = new double[size / 2];
        for (int line = 0; line < amplitudes.length; line++) {
            amplitudes[line] = 4 * lines[line].norm() / ripple.length;
        }
        return new Spectrum(1 / (size * step), amplitudes);
    }
}
