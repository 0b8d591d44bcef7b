package railwitness.analysis.steady;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Watches one quantity come to rest, reading by reading.
 *
 * <p>Keeps at most some hundred short stretches of the window, so a reading costs the same at any rate and any length.
 * Not for several threads at once.
 */
public final class Settling {
    private static final int STRETCHES = 64;
    private static final double ROUNDING = 1e-12;

    private final SettlingRule rule;
    private final Deque<Stretch> window = new ArrayDeque<>();
    private final double[] critical = new double[2 * STRETCHES];
    private double firstSeconds;
    private double lastSeconds;
    private boolean started;
    private boolean settled;
    private OptionalDouble secondsToSettle = OptionalDouble.empty();

    public Settling(SettlingRule rule) {
        this.rule = rule;
    }

    /**
     * Takes the next reading.
     *
     * @param seconds its time on any steady clock, not before the last one
     * @param value finite
     */
    public void add(double seconds, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("reading to settle is " + value + ": must be a finite number");
        }
        if (started && !(seconds >= lastSeconds)) {
            throw new IllegalArgumentException(
                    "time of a reading is " + seconds + " s: must not lie before the last one, " + lastSeconds + " s");
        }
        firstSeconds = started ? firstSeconds : seconds;
        started = true;
        lastSeconds = seconds;
        keep(seconds, value);
        settled = full() && atRest();
        if (settled && secondsToSettle.isEmpty()) {
            secondsToSettle = OptionalDouble.of(lastSeconds - firstSeconds);
        }
    }

    private void keep(double seconds, double value) {
        Stretch last = window.peekLast();
        double length = rule.windowSeconds() / STRETCHES;
        if (last == null || seconds - last.begin > length || window.size() < rule.leastReadings()) {
            window.addLast(new Stretch(seconds, value));
        } else {
            last.add(seconds, value);
        }
        while (window.size() > rule.leastReadings()
                && seconds - window.peekFirst().begin > rule.windowSeconds() + length) {
            window.removeFirst();
        }
    }

    private boolean full() {
        return lastSeconds - firstSeconds >= rule.windowSeconds() && window.size() >= rule.leastReadings();
    }

    private boolean atRest() {
        int n = window.size();
        double t0 = window.peekFirst().begin;
        double x0 = window.peekFirst().mean();
        double st = 0;
        double sx = 0;
        for (Stretch s : window) {
            st += s.time() - t0;
            sx += s.mean() - x0;
        }
        double sxx = 0;
        double sxy = 0;
        for (Stretch s : window) {
            double t = s.time() - t0 - st / n;
            sxx += t * t;
            sxy += t * (s.mean() - x0);
        }
        double slope = sxx == 0 ? 0 : sxy / sxx;
        double mean = x0 + sx / n;
        double change = Math.abs(slope) * rule.windowSeconds();
        if (change <= Math.max(ROUNDING, rule.negligibleFraction()) * Math.abs(mean) || change == 0) {
            return true;
        }
        return Math.abs(slope) <= bound(n, slope, mean, t0 + st / n, sxx);
    }

    /** The largest slope that scatter like that about the line makes in nine windows of ten. */
    private double bound(int n, double slope, double mean, double middle, double sxx) {
        double squares = 0;
        double products = 0;
        double before = 0;
        Iterator<Stretch> stretches = window.iterator();
        for (int i = 0; i < n; i++) {
            Stretch s = stretches.next();
            double e = s.mean() - mean - slope * (s.time() - middle);
            squares += e * e;
            products += i == 0 ? 0 : e * before;
            before = e;
        }
        double r1 = squares == 0 ? 0 : products / squares + 2.0 / n;
        double r = Math.max(0, Math.min(1, r1));
        double worth = Math.max(leastWorth(n), n * (1 - r) / (1 + r));
        double variance = squares / n / (1 - 2 / worth) * (n / worth) / sxx;
        return critical((int) worth - 2) * Math.sqrt(variance);
    }

    /**
     * A bend leaves residuals as alike as slow noise does. Noise is therefore believed to last no longer than a sixth
     * of the window; what is slower counts as movement.
     */
    private static double leastWorth(int n) {
        return Math.min(n, Math.max(5, n / 6.0));
    }

    private double critical(int dof) {
        if (dof >= critical.length) {
            return new TDistribution(dof).inverseCumulativeProbability(1 - SettlingRule.SIGNIFICANCE / 2);
        }
        if (critical[dof] == 0) {
            critical[dof] = new TDistribution(dof).inverseCumulativeProbability(1 - SettlingRule.SIGNIFICANCE / 2);
        }
        return critical[dof];
    }

    /** Whether the rule is met as of the last reading. */
    public boolean settled() {
        return settled;
    }

    /** Seconds from the first reading to the one at which the rule was first met; absent until then. */
    public OptionalDouble secondsToSettle() {
        return secondsToSettle;
    }

    public SettlingRule rule() {
        return rule;
    }

    /** Readings of a short time, kept as their mean. */
    private static final class Stretch {
        private final double begin;
        private final double first;
        private double times;
        private double values;
        private int count;

        Stretch(double seconds, double value) {
            begin = seconds;
            first = value;
            count = 1;
        }

        void add(double seconds, double value) {
            times += seconds - begin;
            values += value - first;
            count++;
        }

        double time() {
            return begin + times / count;
        }

        double mean() {
            return first + values / count;
        }
    }
}
