package railwitness.drivers.converter;

import java.util.Arrays;

/** The corners of the rails' rectified currents over one cycle; between corners they run straight. */
final class CycleTrace {
    private final int rails;
    private double[] seconds = new double[64];
    private double[][] amps = new double[64][];
    private int count;

    CycleTrace(int rails) {
        this.rails = rails;
    }

    void add(double atSeconds, double[] railAmps) {
        if (count == seconds.length) {
            seconds = Arrays.copyOf(seconds, 2 * count);
            amps = Arrays.copyOf(amps, 2 * count);
        }
        seconds[count] = atSeconds;
        amps[count++] = Arrays.copyOf(railAmps, rails);
    }

    /** Current of a rail at equally spaced times over the cycle that ends at the last corner, A. */
    double[] sampled(int rail, int samples) {
        double[] out = new double[samples];
        double period = seconds[count - 1];
        int corner = 0;
        for (int k = 0; k < samples; k++) {
            double at = period * k / samples;
            while (corner < count - 1 && seconds[corner] < at) {
                corner++;
            }
            double before = corner == 0 ? 0 : seconds[corner - 1];
            double from = amps[corner == 0 ? count - 1 : corner - 1][rail];
            double width = seconds[corner] - before;
            out[k] = width <= 0 ? amps[corner][rail] : from + (amps[corner][rail] - from) * (at - before) / width;
        }
        return out;
    }
}
