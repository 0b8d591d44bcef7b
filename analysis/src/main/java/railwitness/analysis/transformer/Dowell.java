package railwitness.analysis.transformer;

/**
 * Alternating-current resistance of a layered winding over its direct-current resistance (P. L. Dowell, 'Effects of eddy
 * currents in transformer windings', Proc. IEE 113 (1966), 1387 to 1394).
 *
 * <p>Weak on a toroid: it takes the field along the layers as that of a long solenoid, and round wires as a foil of the
 * same area. Within some 20 % where layers are full (from memory, literature on round wires).
 */
public final class Dowell {
    private static final int HARMONICS = 40;

    private Dowell() {}

    /**
     * For a sine current.
     *
     * @param strandMetres diameter of a strand, m
     * @param layers strands one over the other within one winding, counted in strands, above 0; need not be whole
     * @param porosity share of a layer that is copper, above 0 to 1
     * @param skinDepthMetres m
     * @return 1 or more
     */
    public static double factor(double strandMetres, double layers, double porosity, double skinDepthMetres) {
        double foil = strandMetres * Math.sqrt(Math.PI) / 2;
        double x = foil / skinDepthMetres * Math.sqrt(porosity);
        if (x < 1e-3) {
            return 1;
        }
        double skin = x * (Math.sinh(2 * x) + Math.sin(2 * x)) / (Math.cosh(2 * x) - Math.cos(2 * x));
        double proximity = 2 * x * (Math.sinh(x) - Math.sin(x)) / (Math.cosh(x) + Math.cos(x));
        double m = Math.max(1, layers);
        return skin + (m * m - 1) / 3 * proximity;
    }

    /**
     * For the current of one half of a push-pull winding, a block of the duty's width: its harmonics each with their own
     * factor, by their share of the squared current (direct current included with factor 1).
     *
     * @param duty share of the cycle in which the half carries current, above 0 to 0.5
     * @param frequencyHz of the cycle, Hz
     * @param degC of the copper
     */
    public static double blockFactor(
            double strandMetres, double layers, double porosity, double duty, double frequencyHz, double degC) {
        double whole = duty;
        double taken = duty * duty;
        double heating = taken;
        double last = 1;
        for (int n = 1; n <= HARMONICS; n++) {
            double amplitude = 2 / (n * Math.PI) * Math.sin(n * Math.PI * duty);
            double squared = amplitude * amplitude / 2;
            last = factor(strandMetres, layers, porosity, Copper.skinDepthMetres(n * frequencyHz, degC));
            heating += squared * last;
            taken += squared;
        }
        return (heating + Math.max(0, whole - taken) * last) / whole;
    }
}
