package railwitness.analysis.transformer;

import railwitness.analysis.design.FluxDensity;

/** What the core sees. */
final class Flux {
    private Flux() {}

    /** Peak flux density once the drive runs evenly, T. */
    static double peak(ToroidDesign design, double inputVolts) {
        Drive drive = design.drive();
        return FluxDensity.peakTesla(
                inputVolts,
                drive.duty(),
                drive.frequencyHz(),
                design.primary().turns(),
                design.core().area());
    }

    /** Swing of the first half-cycle from rest, T: twice the even peak where the duty does not grow slowly. */
    static double first(ToroidDesign design, double inputVolts) {
        return (design.drive().softStart() ? 1 : 2) * peak(design, inputVolts);
    }

    /** Magnetising inductance of one primary half, H. */
    static double inductance(ToroidDesign design) {
        int turns = design.primary().turns();
        return turns * turns * design.core().inductancePerTurnSquared();
    }

    /**
     * Peak of the magnetising current without load, A: in the pauses it flows on through the other switch's body diode and
     * has the winding swing over, so each polarity lasts half the cycle whatever the duty (seen in a circuit simulator).
     */
    static double idleCurrent(ToroidDesign design, double inputVolts) {
        return inputVolts / design.drive().frequencyHz() / inductance(design) / 4;
    }

    /** Peak of the magnetising current, A. */
    static double current(ToroidDesign design, double inputVolts) {
        Drive drive = design.drive();
        return inputVolts * drive.duty() / drive.frequencyHz() / inductance(design) / 2;
    }
}
