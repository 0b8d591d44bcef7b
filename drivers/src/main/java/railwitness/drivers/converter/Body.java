package railwitness.drivers.converter;

/** A body that takes heat and gives it to the ambient air: first order, exact for a power that stays over the step. */
final class Body {
    private final double joulePerKelvin;
    private final double kelvinPerWatt;
    private double ambientDegC;
    private double degC;

    Body(double joulePerKelvin, double kelvinPerWatt, double ambientDegC) {
        this.joulePerKelvin = joulePerKelvin;
        this.kelvinPerWatt = kelvinPerWatt;
        this.ambientDegC = ambientDegC;
        degC = ambientDegC;
    }

    void heat(double watts, double seconds) {
        double end = ambientDegC + watts * kelvinPerWatt;
        degC += (end - degC) * -Math.expm1(-seconds / (joulePerKelvin * kelvinPerWatt));
    }

    /** The air about it from now on. */
    void ambient(double airDegC) {
        ambientDegC = airDegC;
    }

    double degC() {
        return degC;
    }
}
