package railwitness.analysis.design;

import java.util.List;

/**
 * The converter at one operating point.
 *
 * @param feeds one per rail, in the order of the loads
 * @param primarySquare mean square of the current in switches and primary together, A^2
 * @param primaryMean mean of it, A
 */
record Conversion(List<Feed> feeds, double primarySquare, double primaryMean) {}
