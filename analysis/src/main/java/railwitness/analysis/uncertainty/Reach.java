package railwitness.analysis.uncertainty;

/**
 * How far a value may lie from the truth when nothing is wrong: the stated limits of every influence added up, and
 * four standard uncertainties of what has no limit. Far wider than U at 95 %: what lies beyond it is no chance.
 */
public final class Reach {
    private static final double NORMAL = 3;
    private static final double SCATTER = 4;
    private static final double FEW = 5;

    private Reach() {}

    /** In the estimate's unit, 0 or more; where an accuracy is not stated it holds only what is known. */
    public static double of(Estimate estimate) {
        return estimate.terms().stream().mapToDouble(Reach::of).sum();
    }

    private static double of(Term term) {
        Influence cause = term.influence();
        double u = Math.abs(term.coefficient());
        if (cause.shape().bounded()) {
            return u * cause.shape().divisor();
        }
        boolean scatter = cause.shape() == Shape.STUDENT;
        double few = scatter ? 1 + FEW / cause.degreesOfFreedom() : 1;
        return u * (scatter ? SCATTER * few : NORMAL);
    }
}
