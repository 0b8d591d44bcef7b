package railwitness.analysis.verdict;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import railwitness.analysis.uncertainty.Estimate;

/**
 * A requirement and what came of it.
 *
 * @param requirement what was asked
 * @param rule the decision rule it was judged by
 * @param outcome what came of it
 * @param probability of conformity, 0 to 1 (JCGM 106); absent where the uncertainty is not known
 * @param reason one line of print, also for a pass
 */
public record Verdict(
        Requirement requirement, DecisionRule rule, Outcome outcome, OptionalDouble probability, String reason) {
    private static final double COVERAGE = 0.95;

    /** Holds a figure against a requirement. */
    public static Verdict of(Requirement requirement, Estimate figure, DecisionRule rule) {
        if (figure.known()) {
            return judged(requirement, figure, rule);
        }
        return rule == DecisionRule.SIMPLE_ACCEPTANCE
                ? scatterOnly(requirement, figure)
                : notJudged(
                        requirement,
                        rule,
                        "scatter only: the accuracy of an instrument behind this figure is not stated, so the guard"
                                + " band is not known");
    }

    private static Verdict judged(Requirement requirement, Estimate figure, DecisionRule rule) {
        Limit limit = requirement.limit();
        double expanded = figure.coverage(COVERAGE).expanded();
        double margin = limit.margin(figure.value());
        double probability = limit.probability(figure);
        String reason = String.format(
                Locale.ROOT,
                "%s the limit by %.3g, U = %.3g; conforms with probability %.3f",
                margin >= 0 ? "inside" : "outside",
                Math.abs(margin),
                expanded,
                probability);
        Outcome outcome = rule.outcome(margin, limit.guardBand(figure));
        return new Verdict(requirement, rule, outcome, OptionalDouble.of(probability), reason);
    }

    private static Verdict scatterOnly(Requirement requirement, Estimate figure) {
        double margin = requirement.limit().margin(figure.value());
        String reason = String.format(
                Locale.ROOT,
                "%s the limit by %.3g; scatter only: accuracy not stated, the value alone decided",
                margin >= 0 ? "inside" : "outside",
                Math.abs(margin));
        return new Verdict(
                requirement,
                DecisionRule.SIMPLE_ACCEPTANCE,
                DecisionRule.SIMPLE_ACCEPTANCE.outcome(margin, 0),
                OptionalDouble.empty(),
                reason);
    }

    /**
     * Holds a figure that can only be too small (a meter whose band loses part of a ripple) against an upper limit:
     * it can prove a fail, never a pass.
     *
     * @param why the figure is too small, for print
     * @throws IllegalArgumentException where the requirement has a lower limit, of which such a figure says nothing
     */
    public static Verdict ofLeast(Requirement requirement, Estimate figure, DecisionRule rule, String why) {
        if (requirement.limit().least().isPresent()) {
            throw new IllegalArgumentException("requirement '" + requirement.name() + "' asks for "
                    + requirement.limit().words()
                    + ": a figure known to be too small can be held only against 'at most'");
        }
        Verdict verdict = of(requirement, figure, rule);
        if (verdict.outcome() == Outcome.FAIL || verdict.outcome() == Outcome.NOT_JUDGED) {
            return verdict;
        }
        return notJudged(requirement, rule, why + ": the true value is larger by an unknown amount");
    }

    /** A requirement that the data cannot answer. */
    public static Verdict notJudged(Requirement requirement, DecisionRule rule, String reason) {
        return new Verdict(requirement, rule, Outcome.NOT_JUDGED, OptionalDouble.empty(), reason);
    }

    /** The unit's verdict from all of its requirements; none at all is not judged. */
    public static Fitness overall(List<Verdict> verdicts) {
        if (verdicts.stream().anyMatch(verdict -> verdict.outcome().unfit())) {
            return Fitness.NOT_FIT;
        }
        boolean open =
                verdicts.isEmpty() || verdicts.stream().anyMatch(verdict -> verdict.outcome() == Outcome.NOT_JUDGED);
        return open ? Fitness.NOT_JUDGED : Fitness.FIT;
    }
}
