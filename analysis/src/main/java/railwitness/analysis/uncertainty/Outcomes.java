package railwitness.analysis.uncertainty;

import java.util.Arrays;

/** What a Monte Carlo run gave, sorted (JCGM 101, 7.5 to 7.7). */
public final class Outcomes {
    private final double[] sorted;

    Outcomes(double[] outcomes) {
        sorted = outcomes.clone();
        for (double outcome : sorted) {
            Arguments.unlessFinite("the model's value in a Monte Carlo trial", outcome);
        }
        Arrays.sort(sorted);
    }

    public double mean() {
        return Moments.mean(sorted);
    }

    /** Standard deviation of the outcomes. */
    public double u() {
        return Moments.standardDeviation(sorted);
    }

    public int count() {
        return sorted.length;
    }

    /** The interval that leaves as much below as above; probability between 0 and 1. */
    public Interval symmetric(double probability) {
        int inside = inside(probability);
        int first = (sorted.length - inside) / 2;
        return new Interval(sorted[first], sorted[first + inside - 1]);
    }

    /** The shortest interval that holds the probability, between 0 and 1. */
    public Interval shortest(double probability) {
        int inside = inside(probability);
        int best = 0;
        for (int first = 1; first + inside <= sorted.length; first++) {
            if (sorted[first + inside - 1] - sorted[first] < sorted[best + inside - 1] - sorted[best]) {
                best = first;
            }
        }
        return new Interval(sorted[best], sorted[best + inside - 1]);
    }

    private int inside(double probability) {
        return (int) Math.round(Arguments.unlessFraction("coverage probability", probability) * sorted.length);
    }

    /** Share of outcomes within the interval, ends included. */
    public double share(Interval interval) {
        long inside = Arrays.stream(sorted).filter(interval::holds).count();
        return inside / (double) sorted.length;
    }
}
