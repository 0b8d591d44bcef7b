package railwitness.analysis.uncertainty;

/** Mean and standard deviation of readings, in two passes (one pass loses the digits: NIST StRD NumAcc3). */
public final class Moments {
    private Moments() {}

    /** Arithmetic mean, corrected by a second pass; at least one reading, all finite. */
    public static double mean(double... readings) {
        int n = Arguments.unlessAtLeast("number of readings", readings.length, 1);
        double first = readings[0];
        double sum = 0;
        for (double reading : readings) {
            sum += Arguments.unlessFinite("reading", reading) - first;
        }
        double mean = first + sum / n;
        double rest = 0;
        for (double reading : readings) {
            rest += reading - mean;
        }
        return mean + rest / n;
    }

    /** Sample standard deviation, divisor n - 1 (GUM 4.2.2); at least two readings. */
    public static double standardDeviation(double... readings) {
        int n = Arguments.unlessAtLeast("number of readings", readings.length, 2);
        double mean = mean(readings);
        double squares = 0;
        double rest = 0;
        for (double reading : readings) {
            squares += (reading - mean) * (reading - mean);
            rest += reading - mean;
        }
        return Math.sqrt(Math.max(0, squares - rest * rest / n) / (n - 1));
    }
}
