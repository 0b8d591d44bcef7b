package railwitness.analysis.design;

/**
 * The current of one rectifier pulse: it rises as {@code amplitude * (1 - exp(-t/tau))} while a switch is on, then falls
 * in a straight line as the leakage inductance empties. Worked out from the mean it must have.
 *
 * @param amplitude what the rise tends to, A
 * @param peak at the end of the on time, A
 * @param meanSquare over the period, A^2
 */
record Pulse(double amplitude, double peak, double meanSquare) {

    /**
     * The pulse that carries a mean current.
     *
     * @param mean A, 0 or more
     * @param tau inductance over resistance of the path, s; 0 rises at once
     * @param onSeconds how long a switch is on, s
     * @param periodSeconds from pulse to pulse, s
     * @param fallSecondsPerAmpere inductance over the voltage that empties it, s/A
     */
    static Pulse carrying(
            double mean, double tau, double onSeconds, double periodSeconds, double fallSecondsPerAmpere) {
        double rise = tau == 0 ? 1 : 1 - Math.exp(-onSeconds / tau);
        double riseArea = onSeconds - tau * rise;
        double fallArea = fallSecondsPerAmpere * rise * rise / 2; // times the amplitude squared
        double charge = mean * periodSeconds;
        double amplitude = fallArea == 0
                ? charge / riseArea
                : 2 * charge / (riseArea + Math.sqrt(riseArea * riseArea + 4 * fallArea * charge));
        double peak = amplitude * rise;
        double squareRise =
                onSeconds - 2 * tau * rise + (tau == 0 ? 0 : tau / 2 * (1 - Math.exp(-2 * onSeconds / tau)));
        double fallSeconds = fallSecondsPerAmpere * peak;
        double squares = amplitude * amplitude * squareRise + peak * peak * fallSeconds / 3;
        return new Pulse(amplitude, peak, squares / periodSeconds);
    }
}
