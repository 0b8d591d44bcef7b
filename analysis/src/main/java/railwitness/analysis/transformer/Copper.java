package railwitness.analysis.transformer;

/** Annealed copper, the metal of every winding here (IEC 60028: the International Annealed Copper Standard). */
public final class Copper {
    /** Resistivity at 20 degC, ohm metre (IEC 60028). */
    public static final double RESISTIVITY_20 = 1.7241e-8;

    /** Temperature coefficient of resistance at 20 degC, 1/K (IEC 60028). */
    public static final double PER_KELVIN_20 = 0.00393;

    /**
     * Temperature below zero at which a straight line through the resistance would reach nothing, K: 234.5 by its
     * coefficient. IEC 60034-1 rounds to 235 (from memory); a rise of 60 K differs by 0.1 K.
     */
    private static final double RECIPROCAL_OFFSET = 1 / PER_KELVIN_20 - 20;

    private static final double MU_0 = 4e-7 * Math.PI;

    private Copper() {}

    /** Resistivity, ohm metre, at a temperature in degC. */
    public static double resistivity(double degC) {
        return RESISTIVITY_20 * factor(degC);
    }

    /** Resistance at a temperature in degC over resistance at 20 degC. */
    public static double factor(double degC) {
        return 1 + PER_KELVIN_20 * (degC - 20);
    }

    /**
     * Temperature of a winding by its resistance, degC: {@code (R2 / R1) (k + T1) - k}, the change-of-resistance method
     * (method of IEC 60034-1, 8.6.2; k is 234.5 K here).
     *
     * @param coldOhms ohm, at the known temperature, above 0
     * @param coldDegC of the cold winding
     * @param hotOhms ohm
     */
    public static double degCFromResistance(double coldOhms, double coldDegC, double hotOhms) {
        if (!(coldOhms > 0)) {
            throw new IllegalArgumentException("cold resistance " + coldOhms + " ohm must be above 0");
        }
        return hotOhms / coldOhms * (RECIPROCAL_OFFSET + coldDegC) - RECIPROCAL_OFFSET;
    }

    /**
     * Skin depth, m: {@code sqrt(rho / (pi f mu0))}.
     *
     * @param frequencyHz above 0, Hz
     * @param degC of the copper
     */
    public static double skinDepthMetres(double frequencyHz, double degC) {
        if (!(frequencyHz > 0)) {
            throw new IllegalArgumentException("frequency " + frequencyHz + " Hz must be above 0");
        }
        return Math.sqrt(resistivity(degC) / (Math.PI * frequencyHz * MU_0));
    }
}
