package railwitness.analysis.expected;

/**
 * The forward model's own error, as it was found against the circuit simulator on the building half of the reference set
 * ({@code analysis/README.md} has the table): standard uncertainties of natural logarithms. What is common moves all
 * points of a session together; the rest differs from point to point.
 */
public final class ModelError {
    /** Below this share of full load a rail is ruled by ringing and magnetising current. */
    static final double LIGHT = 0.15;

    /** Below this a rail counts as unloaded. */
    static final double IDLE = 0.01;

    private ModelError() {}

    /** Of all loaded rail voltages together. */
    public static double commonVolts() {
        return 0.002;
    }

    /** Of the fall under load: of the rail voltage at full load, growing with the load. */
    public static double sag(boolean choke) {
        return choke ? 0.003 : 0.004;
    }

    /**
     * Of rails without load together: ringing charges them to its peaks. With capacitor input it does so in every pulse: of
     * the fourteen such supplies in all sets the error's mean square root is 1.1 %, and it is the largest (2.7 %) where a
     * rail of high voltage is built for little current; behind a choke it is 0.5 %, once 1.1 %.
     */
    public static double commonIdleVolts(boolean choke) {
        return choke ? 0.01 : 0.012;
    }

    /** Of one rail at one point. */
    public static double volts(boolean choke, double fraction) {
        if (fraction < IDLE) {
            return 0.004;
        }
        if (fraction < LIGHT) {
            return choke ? 0.02 : 0.002;
        }
        return choke && fraction < 0.3 ? 0.005 : 0.0012;
    }

    /** Of all losses together. */
    public static double commonLoss() {
        return 0.05;
    }

    /** Of the losses without load together. */
    public static double commonIdleLoss() {
        return 0.05;
    }

    /** Of the loss where a sheet leaves most parts out: who builds thriftily does so with all of them. */
    static double usualLoss() {
        return 0.1;
    }

    /** Of the loss at one point. */
    public static double loss() {
        return 0.025;
    }

    /** Of all ripples together. */
    public static double commonRipple() {
        return 0.06;
    }

    /** Of one rail's ripple at one point; a rail without load has none that could be told. */
    public static double ripple(double fraction) {
        return fraction < LIGHT ? 0.35 : fraction < 0.3 ? 0.08 : 0.035;
    }
}
