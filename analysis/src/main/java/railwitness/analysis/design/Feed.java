package railwitness.analysis.design;

/**
 * What the rectifier does for one rail.
 *
 * @param volts magnitude of the rail, V
 * @param meanSquare of the current through secondary and rectifier, A^2
 * @param capacitorSquare mean square of the current in the filter capacitor, A^2
 * @param rippleHz lowest strong frequency of that current, Hz
 */
record Feed(double volts, double meanSquare, double capacitorSquare, double rippleHz) {}
