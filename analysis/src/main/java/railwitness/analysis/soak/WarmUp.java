package railwitness.analysis.soak;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.special.Erf;
import railwitness.analysis.steady.Autocorrelation;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * The way to the final temperature of a body that is coupled to a second one: value = final + A exp(-t / tau) +
 * B exp(-t / tau2), each stretch of running with its own A and B, the room's wandering taken off as a body of that time
 * constant would follow it.
 *
 * <p>What a short record leaves open is not decided: every pair of time constants, and a single one, is weighed by how
 * probable it makes the readings (Bayes' rule with log-uniform time constants and a wide prior for the second body's
 * share), and the band is that of all of them together. The scatter counts for as many independent readings as its
 * autocorrelation leaves. No instrument's accuracy is in it.
 */
public final class WarmUp {
    private static final int LEAST_MEANS = 12;
    private static final int ROWS = 12;
    private static final int ZOOMS = 4;
    private static final double FAST_OVER_SLOW = 0.7;
    private static final double LONGEST = 4;
    private static final double SHORTEST = 1.0 / 80;
    private static final double SHARE_MEAN = 0.05;
    private static final double SHARE_WIDTH = 0.25;
    private static final double POWER = 1;
    private static final double SEEN = 1.5;
    private static final double ONE_BODY = 0.3;
    private static final double UNLIKELY = 12;
    private static final double KEPT = 1e-6;
    private static final double MODEL_FLOOR = 1e-4;
    private static final double BAND = 0.95;

    private final ThermalRecord record;
    private final List<WarmUpCell> cells;
    private final double independent;
    private final double scatterKelvin;

    private WarmUp(ThermalRecord record, List<WarmUpCell> cells, double independent, double scatterKelvin) {
        this.record = record;
        this.cells = cells;
        this.independent = independent;
        this.scatterKelvin = scatterKelvin;
    }

    /**
     * Fits a record.
     *
     * @param seconds time of each reading, rising
     * @param celsius as many
     * @param ambient the room at the same times, where it was measured
     * @param breaks times at which running began again after an interruption, s
     * @return empty for fewer than a dozen readings or no time between them
     */
    public static Optional<WarmUp> of(
            double[] seconds, double[] celsius, Optional<double[]> ambient, double... breaks) {
        if (seconds.length < LEAST_MEANS || !(seconds[seconds.length - 1] > seconds[0])) {
            return Optional.empty();
        }
        ThermalRecord record = ThermalRecord.of(seconds, celsius, ambient, breaks);
        if (record.size() < LEAST_MEANS || !(record.spanSeconds() > 0)) {
            return Optional.empty();
        }
        return Optional.of(new Search(record).found());
    }

    /** Without a room and without a break. */
    public static Optional<WarmUp> of(double[] seconds, double[] celsius) {
        return of(seconds, celsius, Optional.empty());
    }

    /** What it tends to with the room as it was at the end, degC; U of 95 % covers the band's two ends. */
    public Estimate finalCelsius() {
        return estimate("way to the final temperature", WarmUpCell::finalValue, WarmUpCell::uOfFinal)
                .plus(record.ambientAtEnd());
    }

    /** The same above the room; equal to {@link #finalCelsius} where no room was measured. */
    public Estimate finalAboveAmbient() {
        return estimate("way to the final temperature", WarmUpCell::finalValue, WarmUpCell::uOfFinal);
    }

    /** The slower of the two time constants, or the only one, s. */
    public Estimate timeConstantSeconds() {
        return estimate("time constant", WarmUpCell::slowSeconds, WarmUpCell::spacingSeconds);
    }

    /** Temperature at a time of the record's own clock, later than it too, degC. */
    public Estimate at(double seconds) {
        double air = record.ambient().isEmpty() ? 0 : followedAt(seconds);
        return estimate("warm-up curve", cell -> cell.at(seconds), cell -> cell.uAt(seconds))
                .plus(air);
    }

    private double followedAt(double seconds) {
        double tau = best().slowSeconds();
        double[] followed = record.followed(tau);
        int n = followed.length;
        if (seconds >= record.seconds()[n - 1]) {
            double left = Math.exp(-(seconds - record.seconds()[n - 1]) / tau);
            return record.ambientAtEnd() + (followed[n - 1] - record.ambientAtEnd()) * left;
        }
        int i = 1;
        while (i < n - 1 && record.seconds()[i] < seconds) {
            i++;
        }
        double part = (seconds - record.seconds()[i - 1]) / (record.seconds()[i] - record.seconds()[i - 1]);
        return followed[i - 1] + Math.max(0, part) * (followed[i] - followed[i - 1]);
    }

    /**
     * Whether the record is too short to foretell anything: something moves, and time constants of more than twice its length
     * are not out of the question.
     */
    public boolean tooShort() {
        double slower = mean(cell -> cell.slowSeconds() > 2 * record.spanSeconds() ? 1 : 0);
        return slower > 0.1 && rangeKelvin() > 6 * scatterKelvin;
    }

    /** How much is still to come at the end of the record, K. */
    public double leftKelvin() {
        double end = record.seconds()[record.size() - 1];
        return Math.abs(mean(WarmUpCell::finalValue) - mean(cell -> cell.at(end)));
    }

    /** Seconds from the begin of the record until no more than so many kelvin are left; 0 where that is so at once. */
    public Estimate secondsUntil(double kelvin) {
        return estimate(
                "way to the final temperature", cell -> cell.secondsUntil(kelvin), cell -> 0.01 * cell.slowSeconds());
    }

    /** Largest change seen, K. */
    public double rangeKelvin() {
        return record.range();
    }

    /** Scatter of one mean about the curve, K. */
    public double scatterKelvin() {
        return scatterKelvin;
    }

    /**
     * When the final temperature will be known to a half-width of so many kelvin, s of the record's clock, if all goes
     * on as now; the present where it is known already, empty where that is not within a hundred times the record.
     */
    public Optional<Double> knownWithin(double kelvin) {
        double end = record.seconds()[record.size() - 1];
        if (finalAboveAmbient().coverage(BAND).expanded() <= kelvin) {
            return Optional.of(end);
        }
        WarmUpCell best = best();
        double begin = record.seconds()[0];
        double perReading = record.spanSeconds() / Math.max(1, independent);
        for (double span = record.spanSeconds() * 1.05; span < 100 * record.spanSeconds(); span *= 1.05) {
            if (2 * best.uOfFinalAfter(span, span / perReading, Math.max(scatterKelvin, 1e-9)) <= kelvin) {
                return Optional.of(begin + span);
            }
        }
        return Optional.empty();
    }

    private WarmUpCell best() {
        WarmUpCell best = cells.get(0);
        for (WarmUpCell cell : cells) {
            best = cell.weight() > best.weight() ? cell : best;
        }
        return best;
    }

    private double mean(java.util.function.ToDoubleFunction<WarmUpCell> what) {
        double sum = 0;
        for (WarmUpCell cell : cells) {
            sum += cell.weight() * what.applyAsDouble(cell);
        }
        return sum;
    }

    /** Middle and half-width of the band that holds 95 % of the weight, as an estimate whose U is that half-width. */
    private Estimate estimate(
            String name,
            java.util.function.ToDoubleFunction<WarmUpCell> value,
            java.util.function.ToDoubleFunction<WarmUpCell> u) {
        double dof = Math.max(3, independent - 4);
        double wider = new TDistribution(dof).inverseCumulativeProbability(0.975) / 1.959964;
        double[] values = cells.stream().mapToDouble(value).toArray();
        double[] us = cells.stream()
                .mapToDouble(cell -> Math.max(1e-12, wider * u.applyAsDouble(cell)))
                .toArray();
        double low = quantile(values, us, (1 - BAND) / 2);
        double high = quantile(values, us, (1 + BAND) / 2);
        return Estimate.of(
                (low + high) / 2,
                Influence.normal(name, (high - low) / 2 / 1.959964, "").times(1));
    }

    private double quantile(double[] values, double[] us, double share) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < values.length; i++) {
            low = Math.min(low, values[i] - 8 * us[i]);
            high = Math.max(high, values[i] + 8 * us[i]);
        }
        for (int i = 0; i < 45; i++) {
            double middle = (low + high) / 2;
            if (below(values, us, middle) < share) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private double below(double[] values, double[] us, double limit) {
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            double z = (limit - values[i]) / us[i];
            double part = z > 8 ? 1 : z < -8 ? 0 : 0.5 * Erf.erfc(-z / Math.sqrt(2));
            sum += cells.get(i).weight() * part;
        }
        return sum;
    }

    /** Weighs the pairs of time constants. */
    private static final class Search {
        private final ThermalRecord record;
        private final WarmUpSums sums;
        private final double lowest;
        private final double highest;
        private final double shareKelvin;
        private double worth;
        private double variance;
        private double floor;

        Search(ThermalRecord record) {
            this.record = record;
            this.sums = new WarmUpSums(record);
            double span = record.spanSeconds();
            lowest = Math.log(span * SHORTEST);
            highest = Math.log(span * LONGEST);
            shareKelvin = Math.max(record.range(), 1e-6);
        }

        WarmUp found() {
            int n = record.size();
            floor = n * Math.pow(MODEL_FLOOR * shareKelvin + 1e-9, 2);
            worth = n;
            variance = Double.POSITIVE_INFINITY;
            WarmUpCell best = closest();
            double[] residuals = sums.residuals(best);
            int free = 3 + 2 * record.segments();
            worth = Math.max(free + 3.0, worth(residuals, free));
            variance = (best.squares() + floor) / n * worth / Math.max(1, worth - free);
            List<WarmUpCell> cells = new ArrayList<>(single());
            double oneBody = total(cells);
            double likely = best.fastSeconds() > 0 ? Math.log(best.fastSeconds()) : lowest;
            List<WarmUpCell> two = pairs(likely);
            double twoBodies = total(two);
            double top = Math.max(oneBody + Math.log(ONE_BODY), twoBodies + Math.log(1 - ONE_BODY));
            List<WarmUpCell> weighed = new ArrayList<>();
            add(weighed, cells, Math.log(ONE_BODY) - top);
            add(weighed, two, Math.log(1 - ONE_BODY) - top);
            double sum = weighed.stream().mapToDouble(WarmUpCell::weight).sum();
            List<WarmUpCell> kept = weighed.stream()
                    .filter(cell -> cell.weight() > KEPT * sum)
                    .map(cell -> cell.weighing(cell.weight() / sum))
                    .toList();
            return new WarmUp(record, kept, worth, Math.sqrt(variance));
        }

        /** All of them where no memory shows: the sum of chance coefficients would only ever take away. */
        private static double worth(double[] residuals, int free) {
            int n = residuals.length;
            boolean memory = new Autocorrelation(residuals).at(1) > 1.5 / Math.sqrt(n);
            return memory ? Math.min(n, Autocorrelation.worth(residuals, free)) : n;
        }

        private static void add(List<WarmUpCell> to, List<WarmUpCell> cells, double less) {
            cells.forEach(cell -> to.add(cell.weighing(Math.exp(cell.logWeight() + less))));
        }

        private static double total(List<WarmUpCell> cells) {
            double top = cells.stream().mapToDouble(WarmUpCell::logWeight).max().orElse(Double.NEGATIVE_INFINITY);
            double sum = 0;
            for (WarmUpCell cell : cells) {
                sum += Math.exp(cell.logWeight() - top);
            }
            return top + Math.log(sum);
        }

        /** Least squares over a plain grid, to know the scatter. */
        private WarmUpCell closest() {
            WarmUpCell best = cell(Math.log(record.spanSeconds()), Double.NaN, 1);
            double step = (highest - lowest) / 40;
            for (double slow = lowest; slow <= highest; slow += step) {
                for (double fast = lowest - 0.5; fast <= slow + Math.log(FAST_OVER_SLOW); fast += 2 * step) {
                    WarmUpCell cell = cell(slow, fast, step);
                    best = cell.squares() < best.squares() ? cell : best;
                }
            }
            double slow = Math.log(best.slowSeconds());
            double fast = best.fastSeconds() > 0 ? Math.log(best.fastSeconds()) : Double.NaN;
            for (double size = step / 2; size > step / 64; size /= 2) {
                for (double a = -1; a <= 1; a++) {
                    for (double b = -1; b <= 1; b++) {
                        WarmUpCell cell = cell(slow + a * size, fast + b * size, size);
                        best = cell.squares() < best.squares() ? cell : best;
                    }
                }
                slow = Math.log(best.slowSeconds());
                fast = best.fastSeconds() > 0 ? Math.log(best.fastSeconds()) : Double.NaN;
            }
            return best;
        }

        private WarmUpCell cell(double logSlow, double logFast, double spacing) {
            double fast = Double.isNaN(logFast) || logFast > logSlow + Math.log(FAST_OVER_SLOW) ? 0 : Math.exp(logFast);
            return sums.cell(
                    Math.exp(logSlow),
                    fast,
                    spacing,
                    new WarmUpSums.Prior(SHARE_MEAN, SHARE_WIDTH * shareKelvin, variance, worth, floor));
        }

        /** Slow time constants of which the record shows little count for less the longer they are. */
        private double beyond(WarmUpCell cell) {
            return -POWER * Math.max(0, Math.log(SEEN * cell.slowSeconds() / record.spanSeconds()));
        }

        private List<WarmUpCell> single() {
            return row(Double.NaN, highest - lowest);
        }

        /** Every pair that is not out of the question: rows of one fast time constant, one through the likeliest. */
        private List<WarmUpCell> pairs(double likely) {
            double low = lowest - 0.7;
            double high = highest + Math.log(FAST_OVER_SLOW);
            double all = high - low;
            List<List<WarmUpCell>> rows = List.of();
            for (int zoom = 0; zoom < ZOOMS; zoom++) {
                rows = new ArrayList<>();
                double step = (high - low) / ROWS;
                double[] totals = new double[ROWS + 1];
                low = likely - Math.rint((likely - low) / step) * step;
                for (int i = 0; i <= ROWS; i++) {
                    List<WarmUpCell> row = row(low + i * step, highest - lowest);
                    double share = Math.log(step / all);
                    rows.add(row.stream().map(cell -> cell.heavier(share)).toList());
                    totals[i] = total(row);
                }
                double top = Double.NEGATIVE_INFINITY;
                for (double one : totals) {
                    top = Math.max(top, one);
                }
                int first = 0;
                int last = ROWS;
                while (first < ROWS && !(totals[first] > top - UNLIKELY)) {
                    first++;
                }
                while (last > 0 && !(totals[last] > top - UNLIKELY)) {
                    last--;
                }
                if (last - first > ROWS / 2) {
                    break;
                }
                double from = low + Math.max(0, first - 1) * step;
                high = low + Math.min(ROWS, last + 1) * step;
                low = from;
            }
            return rows.stream().flatMap(List::stream).toList();
        }

        /** The slow time constants that one fast one leaves open, narrowed to where the weight is. */
        private List<WarmUpCell> row(double logFast, double all) {
            double low = Double.isNaN(logFast) ? lowest : Math.max(lowest, logFast - Math.log(FAST_OVER_SLOW));
            double high = highest;
            List<WarmUpCell> cells = List.of();
            for (int zoom = 0; zoom < 5; zoom++) {
                int points = 16;
                double step = (high - low) / points;
                if (!(step > 0)) {
                    return List.of();
                }
                cells = new ArrayList<>();
                double top = Double.NEGATIVE_INFINITY;
                for (int i = 0; i < points; i++) {
                    WarmUpCell cell = cell(low + (i + 0.5) * step, logFast, step);
                    cell = cell.heavier(Math.log(step / all) + beyond(cell));
                    cells.add(cell);
                    top = Math.max(top, cell.logWeight());
                }
                int first = 0;
                int last = points - 1;
                while (first < points - 1 && !(cells.get(first).logWeight() > top - UNLIKELY)) {
                    first++;
                }
                while (last > 0 && !(cells.get(last).logWeight() > top - UNLIKELY)) {
                    last--;
                }
                if (last - first >= points / 2) {
                    break;
                }
                double from = low + Math.max(0, first - 0.5) * step;
                high = low + Math.min(points, last + 1.5) * step;
                low = from;
            }
            return cells;
        }
    }
}
