package railwitness.analysis.transformer;

/**
 * Root mean square currents of the halves at full load, A. The current is taken as blocks as wide as the duty, which a
 * choke-input filter gives; with a capacitor input it is the same where the leakage smooths it, larger where it peaks.
 */
final class Currents {
    private static final double USUAL_EFFICIENCY = 0.88;

    private final ToroidDesign design;

    Currents(ToroidDesign design) {
        this.design = design;
    }

    /** Mean input current at the nominal input with a usual efficiency of 88 % (common practice, no source), A. */
    double input() {
        return design.outputWatts() / USUAL_EFFICIENCY / design.drive().nominalVolts();
    }

    /** One half of the primary: blocks of {@code I / 2D} for the duty D. */
    double primaryRms() {
        return input() / (2 * Math.sqrt(design.drive().duty()));
    }

    /**
     * One half of the secondary. A rail draws from one half while the first switch is on and from the other while the
     * second is; rails of the other sign draw from the same half at the other time, so their squares add.
     */
    double secondaryRms() {
        double duty = design.drive().duty();
        double positive = 0;
        double negative = 0;
        for (RailLoad rail : design.rails()) {
            if (rail.volts() > 0) {
                positive += rail.amperes() / (2 * duty);
            } else {
                negative += rail.amperes() / (2 * duty);
            }
        }
        return Math.sqrt(duty * (positive * positive + negative * negative));
    }
}
