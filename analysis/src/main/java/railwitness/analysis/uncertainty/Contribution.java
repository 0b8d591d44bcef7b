package railwitness.analysis.uncertainty;

/**
 * What one cause brings to the uncertainty of an estimate.
 *
 * @param name of the influence, or of the set of readings or fit it comes from
 * @param shape its distribution
 * @param u standard uncertainty it brings, in the estimate's unit, never negative
 * @param degreesOfFreedom above 0, may be infinite
 */
public record Contribution(String name, Shape shape, double u, double degreesOfFreedom) {
    /**
     * Its share of a variance, 0 to 1.
     *
     * @param total standard uncertainty of the estimate, above 0
     */
    public double shareOf(double total) {
        return u / total * (u / total);
    }
}
