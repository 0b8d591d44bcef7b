package railwitness.analysis.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.analysis.uncertainty.Term;

/**
 * What the drain of one switch of a push-pull shows of the drive. The voltage of a winding has no mean, so the drain's own
 * mean over whole periods is the input at the transformer's centre tap, less what winding and switch drop on average;
 * the half winding's voltage is that mean less the drain.
 *
 * @param frequencyHz of whole periods, from falling edge to falling edge; the scope's time base is not counted in its U
 * @param duty share of a period in which this drain is low, at half its mean: the switch's time, and what the winding swings on
 * @param voltSeconds of the half winding while this switch is on, V s
 * @param droop fall of the winding's voltage while the other switch is on, by a straight line through what lies between a
 *     fifth and nineteen twentieths of that time, per cent of its begin; empty where no other switch is seen
 * @param spike highest of the drain above the mean level while the other switch is on, V; as {@code droop}
 */
public record DriveWaveform(
        Estimate frequencyHz, Estimate duty, Estimate voltSeconds, Optional<Estimate> droop, Optional<Estimate> spike) {
    /** Fewer samples in a period show no course. */
    public static final int LEAST_PER_PERIOD = 40;

    private static final double ON = 0.25;
    private static final double EDGE = 0.5;
    private static final double OTHER = 1.5;
    private static final double TRIMMED = 0.2;
    private static final double RINGING = 0.2;
    private static final double LEAST_SAMPLES = 4;

    /** One stretch between two edges, in samples, with parts of one. */
    private record Stretch(double from, double to) {
        double length() {
            return to - from;
        }
    }

    /**
     * Works a drain's waveform out.
     *
     * @param volts samples, against ground
     * @param stepSeconds distance of two samples, above 0
     * @param gain relative error of the scope, if its accuracy is stated (sensitivity 1 per volt)
     * @return empty where it is no course of a switch over one whole period or more, of {@value #LEAST_PER_PERIOD} samples each
     */
    public static Optional<DriveWaveform> of(double[] volts, double stepSeconds, Optional<Term> gain) {
        if (!(stepSeconds > 0)) {
            throw new IllegalArgumentException("sample distance " + stepSeconds + " s must be above 0");
        }
        double mean = mean(volts, 0, volts.length - 1);
        List<Stretch> on = stretches(volts, ON * mean, EDGE * mean, false);
        for (int pass = 0; pass < 2 && on.size() > 1; pass++) { // the edges are where the mean of whole periods says
            mean = mean(volts, on.get(0).from(), on.get(on.size() - 1).from());
            on = stretches(volts, ON * mean, EDGE * mean, false);
        }
        if (!(mean > 0) || on.size() < 2) {
            return Optional.empty();
        }
        double period = (on.get(on.size() - 1).from() - on.get(0).from()) / (on.size() - 1);
        return period < LEAST_PER_PERIOD
                ? Optional.empty()
                : Optional.of(new Worked(volts, stepSeconds, gain, mean, period, on).figures());
    }

    /** The waveform with what is known of its edges. */
    private record Worked(
            double[] volts, double step, Optional<Term> gain, double mean, double period, List<Stretch> on) {
        DriveWaveform figures() {
            List<Double> shares = new ArrayList<>();
            List<Double> areas = new ArrayList<>();
            for (Stretch one : on) {
                shares.add(one.length() / period);
                areas.add((mean - inside(one)) * one.length() * step);
            }
            double hertz = 1 / (period * step);
            double share = average(shares);
            double area = average(areas);
            Influence sampling = Influence.triangular("edges between two samples", step, "s");
            double sum = (on.get(on.size() - 1).from() - on.get(0).from()) * step;
            List<Stretch> other = stretches(volts, 1.75 * mean, OTHER * mean, true);
            List<Double> falls = new ArrayList<>();
            List<Double> levels = new ArrayList<>();
            other.forEach(one -> {
                double[] line = line(one);
                falls.add(100 * (line[0] - line[1]) / line[0]);
                levels.add(mean + (line[0] + line[1]) / 2);
            });
            return new DriveWaveform(
                    Estimate.of(hertz, sampling.times(hertz / sum)),
                    scattered(share, shares, sampling.times(1 / (period * step))),
                    inVolts(scattered(area, areas, sampling.times(2 * mean)), area),
                    other.isEmpty() ? Optional.empty() : Optional.of(droop(falls, sampling)),
                    other.isEmpty() ? Optional.empty() : Optional.of(spike(average(levels))));
        }

        /** Mean of the samples between both edges, V. */
        private double inside(Stretch one) {
            return java.util.Arrays.stream(volts, (int) Math.ceil(one.from()), (int) Math.floor(one.to()) + 1)
                    .average()
                    .orElseThrow();
        }

        /** The scope's gain and offset cancel; how its probe is trimmed is not counted. */
        private Estimate droop(List<Double> falls, Influence sampling) {
            double droop = average(falls);
            return scattered(droop, falls, sampling.times(2 * droop / (period * step)));
        }

        private Estimate spike(double level) {
            double above = java.util.Arrays.stream(volts).max().orElseThrow() - level;
            return inVolts(Estimate.exact(above), above);
        }

        /** With the scope's gain; without one the accuracy is not known. */
        private Estimate inVolts(Estimate value, double size) {
            return gain.map(term -> value.with(new Term(term.influence(), term.coefficient() * size)))
                    .orElseGet(value::scatterOnly);
        }

        /** The winding's voltage at the begin and at the end of a stretch, by a line through its middle. */
        private double[] line(Stretch one) {
            double from = one.from() + TRIMMED * one.length();
            double n = 0;
            double sx = 0;
            double sy = 0;
            double sxx = 0;
            double sxy = 0;
            double end = one.to() - TRIMMED / 4 * one.length(); // the edge itself is no droop
            for (int i = (int) Math.ceil(from); i <= end; i++) {
                double x = i - one.from();
                double y = volts[i] - mean;
                n++;
                sx += x;
                sy += y;
                sxx += x * x;
                sxy += x * y;
            }
            double slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
            double begin = (sy - slope * sx) / n;
            return new double[] {begin, begin + slope * one.length()};
        }
    }

    private static Estimate scattered(double value, List<Double> each, Term... terms) {
        Estimate estimate = Estimate.of(value, terms);
        int n = each.size();
        if (n < 2) {
            return estimate;
        }
        double squares =
                each.stream().mapToDouble(one -> (one - value) * (one - value)).sum();
        double u = Math.sqrt(squares / (n - 1) / n);
        return u == 0
                ? estimate
                : estimate.with(Influence.student("scatter of the periods", u, "1", n - 1)
                        .times(1));
    }

    private static double average(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    /**
     * Stretches that lie beyond an edge and reach a level beyond it; those cut off by the begin or the end of the record
     * are left out, and so is what is so short that it can only be ringing.
     */
    private static List<Stretch> stretches(double[] volts, double level, double edge, boolean above) {
        double sign = above ? 1 : -1;
        List<Stretch> found = new ArrayList<>();
        double began = Double.NaN;
        boolean reached = false;
        for (int i = 1; i < volts.length; i++) {
            double before = sign * (volts[i - 1] - edge);
            double now = sign * (volts[i] - edge);
            if (before < 0 && now >= 0) {
                began = i - 1 + crossing(before, now, edge);
                reached = false;
            }
            reached |= sign * (volts[i] - level) >= 0;
            if (before >= 0 && now < 0) {
                double ended = i - 1 + crossing(before, now, edge);
                if (reached && !Double.isNaN(began)) {
                    found.add(new Stretch(began, ended));
                }
                began = Double.NaN;
            }
        }
        double longest = found.stream().mapToDouble(Stretch::length).max().orElse(0);
        return found.stream()
                .filter(one -> one.length() >= RINGING * longest && one.length() >= LEAST_SAMPLES)
                .toList();
    }

    /** Part of a sample after which an edge is crossed; one that is over between two samples may be anywhere there. */
    private static double crossing(double before, double now, double edge) {
        return Math.abs(now - before) > EDGE * edge ? 0.5 : before / (before - now);
    }

    /** Mean between two places, by trapezoids. */
    private static double mean(double[] volts, double from, double to) {
        double sum = 0;
        int first = (int) Math.ceil(from);
        int last = (int) Math.floor(to);
        for (int i = first; i < last; i++) {
            sum += (volts[i] + volts[i + 1]) / 2;
        }
        sum += (first - from) * (at(volts, from) + volts[first]) / 2;
        sum += (to - last) * (volts[last] + at(volts, to)) / 2;
        return sum / (to - from);
    }

    private static double at(double[] volts, double place) {
        int i = Math.min(volts.length - 2, (int) place);
        return volts[i] + (place - i) * (volts[i + 1] - volts[i]);
    }
}
