package railwitness.logger.recording.store.block;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Finds the steps in which an instrument's numbers come: an instrument answers with a few decimal digits, perhaps
 * divided by a shunt afterwards, so each number is a whole number over a common scale, but for the last bits.
 */
final class Lattice {
    private static final double[] TENS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12};
    private static final double LARGEST_COUNT = 1L << 50;
    /** How far, in units of the last place, a number may lie from its step. */
    private static final long NEAR_ULPS = 100;

    private Lattice() {}

    /** The scale s such that nearly every number lies within a few last places of a whole number over s. */
    static OptionalDouble scaleOf(double[] values, int n) {
        for (double ten : TENS) {
            if (fits(values, n, ten, 0)) {
                return OptionalDouble.of(ten);
            }
        }
        return n < 8 ? OptionalDouble.empty() : fromLeastGap(values, n);
    }

    /** Bits to be added to those of {@code count / scale} so that they become those of the number. */
    static long correction(double value, long count, double scale) {
        return Double.doubleToRawLongBits(value) - Double.doubleToRawLongBits(count / scale);
    }

    static long count(double value, double scale) {
        return Math.round(value * scale);
    }

    private static OptionalDouble fromLeastGap(double[] values, int n) {
        double[] sorted = Arrays.copyOf(values, n);
        Arrays.sort(sorted);
        double largest = Math.max(Math.abs(sorted[0]), Math.abs(sorted[n - 1]));
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < n; i++) {
            double gap = sorted[i] - sorted[i - 1];
            if (gap > largest * 1e-12) {
                least = Math.min(least, gap);
            }
        }
        double steps = Math.rint(largest / least);
        if (!(steps >= 1 && steps < LARGEST_COUNT)) {
            return OptionalDouble.empty();
        }
        double scale = steps / largest;
        double rounded = twelveDigits(scale);
        if (fits(values, n, rounded, NEAR_ULPS)) {
            return OptionalDouble.of(rounded);
        }
        return fits(values, n, scale, NEAR_ULPS) ? OptionalDouble.of(scale) : OptionalDouble.empty();
    }

    private static double twelveDigits(double scale) {
        double power = Math.pow(10, 11 - Math.floor(Math.log10(scale)));
        return Math.rint(scale * power) / power;
    }

    /** True when at least nine of ten numbers lie on the lattice. */
    private static boolean fits(double[] values, int n, double scale, long ulps) {
        int misses = 0;
        for (int i = 0; i < n; i++) {
            double scaled = values[i] * scale;
            boolean hit = Math.abs(scaled) < LARGEST_COUNT
                    && Math.abs(correction(values[i], Math.round(scaled), scale)) <= ulps;
            if (!hit && ++misses * 10 > n) {
                return false;
            }
        }
        return true;
    }
}
