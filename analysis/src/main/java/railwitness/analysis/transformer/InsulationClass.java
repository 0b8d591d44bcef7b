package railwitness.analysis.transformer;

/** Thermal class of a winding's insulation: the highest temperature it bears for years (IEC 60085). */
public enum InsulationClass {
    A(105),
    E(120),
    B(130),
    F(155),
    H(180);

    private final double highestDegC;

    InsulationClass(double highestDegC) {
        this.highestDegC = highestDegC;
    }

    /** degC. */
    public double highestDegC() {
        return highestDegC;
    }
}
