package railwitness.drivers.converter;

import java.util.Arrays;

/**
 * The state that takes time to change within the converter.
 *
 * @param terminalVolts on the input capacitor
 * @param railVolts magnitudes on the filter capacitors
 * @param duty share of the cycle of one side at the end of the step
 * @param converged whether the balance was found
 */
record Charge(double terminalVolts, double[] railVolts, double duty, boolean converged) {
    static Charge empty(int rails) {
        return new Charge(0, new double[rails], 0, true);
    }

    static Charge guess(Circuit circuit, Feed feed) {
        double[] rails = new double[circuit.rails];
        for (int r = 0; r < rails.length; r++) {
            rails[r] = feed.volts() * circuit.ratio(0, r);
        }
        return new Charge(feed.volts(), rails, circuit.specimen.drive().duty(), true);
    }

    Charge withDuty(double changed) {
        return new Charge(terminalVolts, railVolts, changed, converged);
    }

    /** The rails moved by so many times what lies between two others; none below zero. */
    Charge goneOn(Charge from, Charge to, double times) {
        double[] moved = railVolts.clone();
        for (int r = 0; r < moved.length; r++) {
            moved[r] = Math.max(0, moved[r] + times * (to.railVolts[r] - from.railVolts[r]));
        }
        return new Charge(terminalVolts, moved, duty, converged);
    }

    double meanRail() {
        return Arrays.stream(railVolts).average().orElse(0);
    }

    /** Largest difference of any voltage, V. */
    double distance(Charge other) {
        double most = Math.abs(terminalVolts - other.terminalVolts);
        for (int r = 0; r < railVolts.length; r++) {
            most = Math.max(most, Math.abs(railVolts[r] - other.railVolts[r]));
        }
        return most;
    }
}
