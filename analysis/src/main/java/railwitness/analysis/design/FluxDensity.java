package railwitness.analysis.design;

/** Flux density of a core driven by a square wave, both ways (Faraday's law). */
public final class FluxDensity {
    private FluxDensity() {}

    /**
     * Peak flux density: {@code B = V * duty / (2 f N A)}; with a duty of one half the textbook's {@code V / (4 f N A)}.
     *
     * @param volts across the winding, V
     * @param duty share of the cycle in which one switch is on, above 0 to 0.5
     * @param frequencyHz of the full cycle, Hz, above 0
     * @param turns of that winding
     * @param areaSquareMetres effective area of the core, m^2, above 0
     * @return T
     */
    public static double peakTesla(
            double volts, double duty, double frequencyHz, double turns, double areaSquareMetres) {
        Allowed.positive("frequency_Hz", frequencyHz);
        Allowed.positive("turns", turns);
        Allowed.positive("core area", areaSquareMetres);
        return volts * duty / (2 * frequencyHz * turns * areaSquareMetres);
    }
}
