package railwitness.drivers.converter;

/**
 * What driving the magnetising current costs. It is a triangle: between equal peaks when both sides are driven, from
 * zero to twice the peak when one side is dead, and steeper beyond saturation. Its energy goes back to the input
 * through the body diodes; switch and winding resistance, and in the one-sided case the diode, keep some.
 */
final class Magnetising {
    private static final double BODY_DIODE_VOLTS = 0.9;
    /** How much of the inductance is left beyond saturation. */
    private static final double SATURATED_SHARE = 0.05;

    private Magnetising() {}

    static double watts(Circuit circuit, double volts, double duty) {
        double swing = volts * duty * circuit.periodSeconds;
        boolean both = circuit.driven[0] && circuit.driven[1];
        boolean none = !circuit.driven[0] && !circuit.driven[1];
        if (none) {
            return 0;
        }
        double pathOhm = (circuit.switchOhm[0] + circuit.switchOhm[1]) / 2 + circuit.primaryOhm;
        double most = Math.max(0, volts) / pathOhm; // whatever the core does
        if (both) {
            double peak = Math.min(peakAmps(circuit, swing / 2), most);
            return pathOhm * peak * peak / 3 * 2 * duty;
        }
        double peak = Math.min(peakAmps(circuit, swing), most);
        return 2 * pathOhm * peak * peak / 3 * duty + BODY_DIODE_VOLTS * peak * duty / 2;
    }

    private static double peakAmps(Circuit circuit, double voltSeconds) {
        double linear = circuit.specimen.transformer().magnetisingHenry();
        double knee = circuit.specimen.transformer().saturationVoltSeconds();
        double beyond = Math.max(0, voltSeconds - knee);
        return Math.min(voltSeconds, knee) / linear + beyond / (SATURATED_SHARE * linear);
    }
}
