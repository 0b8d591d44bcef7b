package railwitness.analysis.design;

/**
 * What the rectifier does for one rail.
 *
 * @param volts magnitude of the rail, V
 * @param freeVolts what it would be if nothing held it, V
 * @param meanSquare of the current through secondary and rectifier, A^2
 * @param capacitorSquare mean square of the current in the filter capacitor, A^2
 * @param rippleHz lowest strong frequency of that current, Hz
 */
record Feed(double volts, double freeVolts, double meanSquare, double capacitorSquare, double rippleHz) {
    /** A rail that nothing holds. */
    static Feed free(double volts, double meanSquare, double capacitorSquare, double rippleHz) {
        return new Feed(volts, volts, meanSquare, capacitorSquare, rippleHz);
    }

    /** The same rail held at this magnitude, V. */
    Feed held(double at) {
        return new Feed(at, freeVolts, meanSquare, capacitorSquare, rippleHz);
    }
}
