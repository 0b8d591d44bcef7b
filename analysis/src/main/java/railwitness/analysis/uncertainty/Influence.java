package railwitness.analysis.uncertainty;

import java.util.Objects;

/**
 * One independent cause of error, such as 'plus meter gain, 100 V range'.
 *
 * <p>Identity counts: two influences of the same name are two causes, and two estimates are correlated exactly
 * where they hold the very same influence. Make one for the gain of one meter on one range and use it in every
 * reading taken there.
 */
public final class Influence {
    private final String name;
    private final Shape shape;
    private final double u;
    private final String unit;
    private final double degreesOfFreedom;
    private final Ensemble ensemble;
    private final double estimate;

    /**
     * @param name what a budget prints; not blank
     * @param shape its distribution
     * @param u its standard uncertainty in its own unit, finite, 0 or more
     * @param unit its own unit, such as "V", "V/V" or "1"
     * @param degreesOfFreedom of {@code u} (GUM G.3, G.4.2): above 0, infinite where u is taken as certain
     */
    public Influence(String name, Shape shape, double u, String unit, double degreesOfFreedom) {
        this(name, shape, u, unit, degreesOfFreedom, null, 0);
    }

    Influence(String name, Shape shape, double u, String unit, double degreesOfFreedom, Ensemble ensemble) {
        this(name, shape, u, unit, degreesOfFreedom, ensemble, 0);
    }

    private Influence(
            String name, Shape shape, double u, String unit, double degreesOfFreedom, Ensemble of, double estimate) {
        this.name = Arguments.blank("name of an influence", name);
        this.shape = Objects.requireNonNull(shape, "shape");
        this.u = Arguments.unlessNotNegative("standard uncertainty of " + name, u);
        this.unit = Objects.requireNonNull(unit, "unit");
        this.degreesOfFreedom = Arguments.unlessPositive("degrees of freedom of " + name, degreesOfFreedom);
        this.ensemble = of;
        this.estimate = estimate;
    }

    /**
     * The same as the uncertainty of a quantity that has this value, such as the mean of readings; to be made before it is used.
     * An error of an instrument has none: it is taken as zero.
     */
    public Influence of(double value) {
        return new Influence(name, shape, u, unit, degreesOfFreedom, ensemble, value);
    }

    /** Value of the quantity it is the uncertainty of, in its own unit; 0 of an error. */
    public double estimate() {
        return estimate;
    }

    /** A normal influence taken as certain, given by its standard uncertainty (a 95 % statement over 2). */
    public static Influence normal(String name, double u, String unit) {
        return new Influence(name, Shape.NORMAL, u, unit, Double.POSITIVE_INFINITY);
    }

    /** Mean of readings, given by its standard uncertainty and its degrees of freedom. */
    public static Influence student(String name, double u, String unit, double degreesOfFreedom) {
        return new Influence(name, Shape.STUDENT, u, unit, degreesOfFreedom);
    }

    /** Limits +-halfWidth, u = halfWidth / root 3. */
    public static Influence rectangular(String name, double halfWidth, String unit) {
        return bounded(name, Shape.RECTANGULAR, halfWidth, unit);
    }

    /** Limits +-halfWidth, u = halfWidth / root 6. */
    public static Influence triangular(String name, double halfWidth, String unit) {
        return bounded(name, Shape.TRIANGULAR, halfWidth, unit);
    }

    /** Limits +-halfWidth, u = halfWidth / root 2. */
    public static Influence uShaped(String name, double halfWidth, String unit) {
        return bounded(name, Shape.U_SHAPED, halfWidth, unit);
    }

    /** Resolution of a display: a rectangle as wide as its last digit, u = lastDigit / root 12. */
    public static Influence resolution(String name, double lastDigit, String unit) {
        return rectangular(name, lastDigit / 2.0, unit);
    }

    private static Influence bounded(String name, Shape shape, double halfWidth, String unit) {
        Arguments.unlessNotNegative("half-width of " + name, halfWidth);
        return new Influence(name, shape, halfWidth / shape.divisor(), unit, Double.POSITIVE_INFINITY);
    }

    /**
     * What this influence does to an estimate.
     *
     * @param sensitivity change of the estimate per unit of this influence, signed
     */
    public Term times(double sensitivity) {
        return new Term(this, sensitivity * u);
    }

    public String name() {
        return name;
    }

    public Shape shape() {
        return shape;
    }

    /** Its standard uncertainty in its own unit. */
    public double u() {
        return u;
    }

    public String unit() {
        return unit;
    }

    /** Above 0; infinite where {@code u} is taken as certain. */
    public double degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /** What counts as one term in a budget: the ensemble it belongs to, else itself. */
    Object group() {
        return ensemble == null ? this : ensemble;
    }

    String groupName() {
        return ensemble == null ? name : ensemble.name();
    }

    @Override
    public String toString() {
        return name + " (" + shape.word() + ", u = " + u + " " + unit + ")";
    }
}
