package railwitness.analysis.sisters;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Grubbs' test of the value furthest from the mean, two-sided (NIST/SEMATECH e-Handbook 1.3.5.17.1; ISO 5725-2 uses it
 * too). It sees a single odd one among few, where the moving ranges on both sides of it widen a control chart's limits
 * beyond it.
 *
 * @param place of the value furthest from the mean, counted from zero
 * @param distance of it from the mean, in standard deviations of all values
 * @param critical distance that is exceeded by chance with the given probability
 */
public record OutlyingValue(int place, double distance, double critical) {
    /**
     * @param risk probability that one of a set of like values is called outlying, between 0 and 1
     * @throws IllegalArgumentException for less than three values
     */
    public static OutlyingValue of(double risk, double... values) {
        int n = values.length;
        if (n < 3) {
            throw new IllegalArgumentException(n + " values must be three or more to find an outlying one");
        }
        double mean = Arrays.stream(values).average().orElseThrow();
        double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
        int furthest = 0;
        for (int i = 1; i < n; i++) {
            if (Math.abs(values[i] - mean) > Math.abs(values[furthest] - mean)) {
                furthest = i;
            }
        }
        double deviation = Math.sqrt(squares / (n - 1));
        double distance = deviation == 0 ? 0 : Math.abs(values[furthest] - mean) / deviation;
        return new OutlyingValue(furthest, distance, critical(risk / 2, n));
    }

    /** One-sided critical distance: (N - 1)/sqrt(N) sqrt(t^2/(N - 2 + t^2)), t at risk/N with N - 2 degrees. */
    static double critical(double risk, int n) {
        double t = new TDistribution(n - 2).inverseCumulativeProbability(1 - risk / n);
        return (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
    }

    /** Whether the value is further out than chance allows. */
    public boolean outlying() {
        return distance > critical;
    }
}
