package railwitness.analysis.uncertainty;

/**
 * The distribution assumed for an influence (GUM 4.3; divisors as in EA-4/02 and JCGM 101 table 1).
 *
 * <p>The divisor turns the half-width of the interval into a standard uncertainty.
 */
public enum Shape {
    /** Known to lie near the middle; no half-width belongs to it. */
    NORMAL("normal", 1.0, 0.0),
    /** Anything within the limits is as likely; half-width over root 3. */
    RECTANGULAR("rectangular", Math.sqrt(3.0), -1.2),
    /** Sum of two equal rectangles; half-width over root 6. */
    TRIANGULAR("triangular", Math.sqrt(6.0), -0.6),
    /** A sine caught at a random phase, most likely at the ends; half-width over root 2. */
    U_SHAPED("U-shaped", Math.sqrt(2.0), -1.5),
    /** Mean of few readings, scatter estimated from themselves (JCGM 101, 6.4.9). */
    STUDENT("Student", 1.0, 0.0);

    private final String word;
    private final double divisor;
    private final double excess;

    Shape(String word, double divisor, double excess) {
        this.word = word;
        this.divisor = divisor;
        this.excess = excess;
    }

    /** The word printed in a budget. */
    public String word() {
        return word;
    }

    /** Half-width over standard uncertainty; 1 for the two shapes that have no half-width. */
    public double divisor() {
        return divisor;
    }

    /** True where the values are bounded by a half-width. */
    public boolean bounded() {
        return this != NORMAL && this != STUDENT;
    }

    /** Excess kurtosis of a bounded shape; zero for the normal (Student's is carried by degrees of freedom). */
    double excess() {
        return excess;
    }
}
