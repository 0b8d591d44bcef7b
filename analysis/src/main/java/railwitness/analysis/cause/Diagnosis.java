package railwitness.analysis.cause;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Deviation;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.SheetRequirement;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.Points;
import railwitness.analysis.supply.RippleMeans;

/**
 * Ranks probable causes by how well they explain the signs: least sum of squared distances, each in its own standard
 * uncertainty. A cause is named only if it explains them better than 'nothing wrong' by more than chance would.
 */
public final class Diagnosis {
    /** By how much the sum of squares must fall before a cause is named (three standard uncertainties, one size). */
    private static final double WORTH_NAMING = 9;

    /** Causes this much worse than the best are not named: a hundredth as likely. */
    private static final double NOT_FAR_BEHIND = 9;

    /** Causes closer than this are not told apart. */
    private static final double NOT_TOLD_APART = 2;

    /** A cause that fits less well than this is not named: its fit would print as zero. */
    private static final double LEAST_FIT = 0.005;

    private static final int GRID = 12;
    private static final int REFINEMENTS = 6;

    private final Bench bench;
    private final Expectation expectation;
    private final List<Symptom> symptoms;
    private final Map<String, Double> healthy;

    private Diagnosis(Bench bench, Expectation expectation, List<Symptom> symptoms, Map<String, Double> healthy) {
        this.bench = bench;
        this.expectation = expectation;
        this.symptoms = symptoms;
        this.healthy = healthy;
    }

    /**
     * Causes of what was found, best first; none where nothing is wrong or the sheet does not know the turns.
     *
     * @param leadOhms what the bench sheet says lies between source and terminals
     */
    public static List<Cause> of(
            Points points, Design design, Figures figures, RippleMeans ripple, OptionalDouble leadOhms) {
        return design.transformer()
                .map(transformer -> of(points, design, transformer, figures, ripple, leadOhms))
                .orElse(List.of());
    }

    private static List<Cause> of(
            Points points,
            Design design,
            Transformer transformer,
            Figures figures,
            RippleMeans ripple,
            OptionalDouble leadOhms) {
        Bench bench = Bench.of(design, transformer, points);
        OptionalDouble standby = standbyLimit(design);
        Expectation expectation = new Expectation(bench, standby.orElse(0) / 2, leadOhms.orElse(0));
        Map<String, Double> healthy = expectation.of(Deviation.none(), 0);
        List<String> leftOut = Prediction.of(design, design.input().nominalVolts(), Map.of())
                .orElseThrow()
                .leftOut();
        List<Symptom> symptoms = new Symptoms(bench, figures, ripple, healthy, leftOut).take(standby, leadOhms);
        return new Diagnosis(bench, expectation, symptoms, healthy).ranked();
    }

    /** What counts as much in standby: the requirement, else the limit. */
    private static OptionalDouble standbyLimit(Design design) {
        return design.requirements().stream()
                .filter(requirement -> requirement.figure() == FigureName.STANDBY_CURRENT)
                .map(SheetRequirement::atMost)
                .filter(OptionalDouble::isPresent)
                .findFirst()
                .orElse(design.limits().standbyAmperes());
    }

    private record Explained(Hypothesis hypothesis, Map<String, Double> expected, double squares) {}

    private List<Cause> ranked() {
        double nothingWrong = squares(healthy);
        if (symptoms.isEmpty() || nothingWrong < WORTH_NAMING) {
            return List.of();
        }
        boolean standby = symptoms.stream().anyMatch(symptom -> symptom.sign() == Sign.STANDBY);
        List<Explained> named = bestOfEachCode(new Suspects(bench, expectation, standby)
                .all().stream()
                        .map(this::explain)
                        .filter(one -> nothingWrong - one.squares() >= WORTH_NAMING)
                        .toList());
        if (named.isEmpty()) {
            return List.of();
        }
        double best = named.get(0).squares();
        List<Explained> near = named.stream()
                .filter(one -> one.squares() - best <= NOT_FAR_BEHIND)
                .toList();
        double all = likelihood(nothingWrong - best);
        for (Explained one : named) {
            all += likelihood(one.squares() - best);
        }
        double sum = all;
        return near.stream()
                .map(one -> cause(one, near, likelihood(one.squares() - best) / sum))
                .filter(cause -> cause.fit() >= LEAST_FIT)
                .toList();
    }

    private static double likelihood(double squares) {
        return Math.exp(-squares / 2);
    }

    private static List<Explained> bestOfEachCode(List<Explained> all) {
        Map<String, Explained> best = new LinkedHashMap<>();
        all.stream()
                .sorted(Comparator.comparingDouble(Explained::squares))
                .forEach(one -> best.putIfAbsent(
                        one.hypothesis().code() + one.hypothesis().rail().orElse(""), one));
        return List.copyOf(best.values());
    }

    private double squares(Map<String, Double> expected) {
        double sum = 0;
        for (Symptom symptom : symptoms) {
            double distance = symptom.distance(expected);
            sum += distance * distance;
        }
        return sum;
    }

    /** Finds the size that explains best: a grid of equal ratios, then ever smaller steps around its best. */
    private Explained explain(Hypothesis hypothesis) {
        Explained best = at(hypothesis, hypothesis.least());
        if (!hypothesis.sized()) {
            return best;
        }
        double ratio = Math.pow(hypothesis.most() / hypothesis.least(), 1.0 / GRID);
        double bestSize = hypothesis.least();
        for (int step = 1; step <= GRID; step++) {
            double size = hypothesis.least() * Math.pow(ratio, step);
            Explained one = at(hypothesis, size);
            if (one.squares() < best.squares()) {
                best = one;
                bestSize = size;
            }
        }
        for (int step = 0; step < REFINEMENTS; step++) {
            ratio = Math.sqrt(ratio);
            for (double size : new double[] {bestSize / ratio, bestSize * ratio}) {
                double allowed = Math.min(hypothesis.most(), Math.max(hypothesis.least(), size));
                Explained one = at(hypothesis, allowed);
                if (one.squares() < best.squares()) {
                    best = one;
                    bestSize = allowed;
                }
            }
        }
        return best;
    }

    private Explained at(Hypothesis hypothesis, double size) {
        Map<String, Double> expected = hypothesis.expected().apply(size);
        return new Explained(hypothesis, expected, squares(expected));
    }

    private Cause cause(Explained one, List<Explained> near, double share) {
        List<String> supports = new ArrayList<>();
        List<String> against = new ArrayList<>();
        for (Symptom symptom : symptoms) {
            double before = Math.pow(symptom.distance(healthy), 2);
            double now = Math.pow(symptom.distance(one.expected()), 2);
            if (before - now > 2) {
                supports.add(symptom.words(healthy) + " of a healthy unit");
            } else if (now > 4) {
                against.add(symptom.words(one.expected()) + " with this fault");
            }
        }
        CauseCode code = one.hypothesis().code();
        return new Cause(code, one.hypothesis().rail(), share * goodness(one), supports, against, alike(one, near));
    }

    /** Probability of readings at least as far from this fault's predictions, if it were the one. */
    private double goodness(Explained one) {
        int free = Math.max(1, symptoms.size() - (one.hypothesis().sized() ? 1 : 0));
        return 1 - new ChiSquaredDistribution(free).cumulativeProbability(one.squares());
    }

    private static List<CauseCode> alike(Explained one, List<Explained> near) {
        CauseCode code = one.hypothesis().code();
        List<CauseCode> alike = new ArrayList<>(code.alike());
        near.stream()
                .filter(other -> Math.abs(other.squares() - one.squares()) < NOT_TOLD_APART)
                .map(other -> other.hypothesis().code())
                .filter(other -> other != code && !alike.contains(other))
                .forEach(alike::add);
        return alike;
    }
}
