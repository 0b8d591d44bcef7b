package railwitness.analysis.converter;

/**
 * What the time in which one switch is on does to the rails.
 *
 * @param charge through each rail's rectifier, A s
 * @param squares integral of the square of that current, A^2 s
 * @param primaryCharge through the switch, A s
 * @param primarySquares integral of its square, A^2 s
 * @param offAmperes what the switch carries when it opens, A
 * @param peak of each rail's current, A
 */
record Stroke(
        double[] charge,
        double[] squares,
        double primaryCharge,
        double primarySquares,
        double offAmperes,
        double[] peak) {}
