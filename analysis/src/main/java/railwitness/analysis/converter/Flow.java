package railwitness.analysis.converter;

/**
 * Currents at one operating point.
 *
 * @param volts magnitude of each rail, V
 * @param squares mean square of each rail's rectified current, A^2
 * @param alternating rms of the current in each filter capacitor, A
 * @param rippleHz lowest strong frequency of that, Hz
 * @param sideWatts loss in switches, primary and feed, W
 * @param primarySquare mean square of the primary's current, A^2
 * @param primaryMean mean of it, A
 * @param leakageWatts energy of the leakage at every opening of a switch, W
 * @param chokeSquares mean square of the current through each choke, A^2
 * @param empty 0 to 1: how far all chokes' currents lie below those at which they begin to run empty
 */
record Flow(
        double[] volts,
        double[] squares,
        double[] alternating,
        double[] rippleHz,
        double sideWatts,
        double primarySquare,
        double primaryMean,
        double leakageWatts,
        double[] chokeSquares,
        double empty) {}
