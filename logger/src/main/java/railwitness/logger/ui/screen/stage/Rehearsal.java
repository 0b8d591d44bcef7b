package railwitness.logger.ui.screen.stage;

import java.util.Optional;
import railwitness.drivers.converter.FaultCode;

/**
 * How a run on the virtual bench goes.
 *
 * @param fault what is wrong with the unit; empty for a sound one
 * @param pace seconds of the session in one second
 * @param seed draws the instruments' errors
 */
public record Rehearsal(Optional<FaultCode> fault, double pace, long seed) {
    /** A sound unit at the real pace. */
    public static Rehearsal usual() {
        return new Rehearsal(Optional.empty(), 1, 1);
    }

    public Rehearsal withFault(Optional<FaultCode> wanted) {
        return new Rehearsal(wanted, pace, seed);
    }

    public Rehearsal withPace(double wanted) {
        return new Rehearsal(fault, wanted, seed);
    }
}
