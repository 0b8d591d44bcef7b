package railwitness.analysis.transformer;

/**
 * A winding's conductor: round copper strands side by side.
 *
 * @param diameterMetres bare copper of one strand, m, above 0 to 10 mm
 * @param strands 1 to 10 000
 */
public record Wire(double diameterMetres, int strands) {
    /** Bare over enamelled diameter, grade 1 enamel of the usual sizes: common practice, no source. */
    static final double ENAMEL = 1.08;

    public Wire {
        if (!(diameterMetres > 0 && diameterMetres <= 0.01)) {
            throw new IllegalArgumentException(
                    "wire diameter " + diameterMetres * 1e3 + " mm must be above 0, at most 10 mm");
        }
        if (strands < 1 || strands > 10_000) {
            throw new IllegalArgumentException("strands " + strands + " must be 1 to 10000");
        }
    }

    /**
     * By American wire gauge: {@code d = 0.127 mm x 92^((36 - n) / 39)} (ASTM B258).
     *
     * @param gauge 0 to 50
     */
    public static Wire awg(int gauge, int strands) {
        if (gauge < 0 || gauge > 50) {
            throw new IllegalArgumentException("wire gauge " + gauge + " AWG must be 0 to 50");
        }
        return new Wire(0.127e-3 * Math.pow(92, (36 - gauge) / 39.0), strands);
    }

    /** Copper of all strands, m^2. */
    public double areaSquareMetres() {
        return strands * Math.PI / 4 * diameterMetres * diameterMetres;
    }

    /** Direct-current resistance per metre, ohm/m, at a temperature in degC. */
    public double ohmsPerMetre(double degC) {
        return Copper.resistivity(degC) / areaSquareMetres();
    }

    /** A strand with its enamel, m. */
    public double outerMetres() {
        return diameterMetres * ENAMEL;
    }

    /** Such as "12 x 0.7 mm". */
    public String words() {
        return strands + " x " + DesignWords.number(diameterMetres * 1e3) + " mm";
    }

    /** Room that one turn takes in the window, strands in square packing, m^2. */
    public double windowSquareMetres() {
        return strands * outerMetres() * outerMetres();
    }
}
