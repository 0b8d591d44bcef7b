package railwitness.analysis.uncertainty;

/**
 * An expanded uncertainty and how its factor was found.
 *
 * @param k coverage factor
 * @param expanded U = k u, in the estimate's unit
 * @param degreesOfFreedom effective, by Welch and Satterthwaite; may be infinite
 * @param probability the interval is meant to hold, between 0 and 1
 * @param how in words, for print: "normal", "Student, 18 degrees of freedom", "rectangular", "trapezoidal", ...
 */
public record Coverage(double k, double expanded, double degreesOfFreedom, double probability, String how) {}
