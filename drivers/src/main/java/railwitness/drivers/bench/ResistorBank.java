package railwitness.drivers.bench;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Load resistors of one rail that the person switches at a prompt.
 *
 * @param ohms the resistances that can be chosen, one at a time
 * @param tolerancePct limit of their error, percent
 * @param ratedWatts what each may take for as long as a test lasts
 */
public record ResistorBank(
        String rail, List<Double> ohms, double tolerancePct, OptionalDouble ratedWatts, Calibration calibration) {
    public ResistorBank {
        ohms = List.copyOf(ohms);
    }

    /** The resistance of the bank that lies nearest by ratio, ohm. */
    public double nearest(double wantedOhms) {
        double best = ohms.get(0);
        for (double choice : ohms) {
            if (Math.abs(Math.log(choice / wantedOhms)) < Math.abs(Math.log(best / wantedOhms))) {
                best = choice;
            }
        }
        return best;
    }
}
