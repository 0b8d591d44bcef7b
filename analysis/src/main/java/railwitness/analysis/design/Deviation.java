package railwitness.analysis.design;

import java.util.Optional;

/**
 * How a unit may differ from its sheet, so that the prediction can say what that would do to the figures. One of these
 * at a time is meant; {@link #none()} is the healthy unit.
 *
 * @param secondaryTurns turns more (or, below 0, fewer) on each secondary half
 * @param pulses which rectifier pulses are missing
 * @param extraCoreWatts loss beyond the sheet's in core or a shorted turn at nominal input, W; grows with its square
 * @param extraPrimaryOhms resistance in leads, switches or primary beyond the sheet's, ohm
 * @param extraStandbyAmperes drawn whether the unit is on or off, A
 * @param tired rail whose filter capacitor has lost its worth, and by how much
 */
public record Deviation(
        int secondaryTurns,
        Pulses pulses,
        double extraCoreWatts,
        double extraPrimaryOhms,
        double extraStandbyAmperes,
        Optional<TiredCapacitor> tired) {

    /** Which pulses reach the rails in a full cycle. */
    public sealed interface Pulses permits AllPulses, HalfSecondary, HalfDrive, HalfOfRail {}

    /** Both halves feed both rails. */
    public record AllPulses() implements Pulses {}

    /** One secondary half gives nothing: each rail gets one pulse a cycle, the rails by turns. */
    public record HalfSecondary() implements Pulses {}

    /** One drive side gives nothing: each rail gets one pulse a cycle, both rails at the same time. */
    public record HalfDrive() implements Pulses {}

    /** One diode of one rail conducts no more: that rail gets one pulse a cycle. */
    public record HalfOfRail(String rail) implements Pulses {}

    /**
     * A capacitor whose resistance has grown.
     *
     * @param rail its rail
     * @param resistanceFactor times the sheet's resistance, 1 or more
     * @param capacitanceShare of the sheet's capacitance that is left, above 0 to 1
     */
    public record TiredCapacitor(String rail, double resistanceFactor, double capacitanceShare) {}

    /** The unit is as its sheet says. */
    public static Deviation none() {
        return new Deviation(0, new AllPulses(), 0, 0, 0, Optional.empty());
    }

    /** Each secondary half has so many turns more, or fewer. */
    public static Deviation turns(int secondaryTurns) {
        return new Deviation(secondaryTurns, new AllPulses(), 0, 0, 0, Optional.empty());
    }

    /** Some pulses are missing. */
    public static Deviation missing(Pulses pulses) {
        return new Deviation(0, pulses, 0, 0, 0, Optional.empty());
    }

    /** Core or a shorted turn take so much more at nominal input, W. */
    public static Deviation coreLoss(double extraWatts) {
        return new Deviation(0, new AllPulses(), extraWatts, 0, 0, Optional.empty());
    }

    /** So much more resistance in leads, switches or primary, ohm. */
    public static Deviation primaryResistance(double extraOhms) {
        return new Deviation(0, new AllPulses(), 0, extraOhms, 0, Optional.empty());
    }

    /** So much more current, on or off, A. */
    public static Deviation standby(double extraAmperes) {
        return new Deviation(0, new AllPulses(), 0, 0, extraAmperes, Optional.empty());
    }

    /** A tired capacitor on one rail. */
    public static Deviation tiredCapacitor(String rail, double resistanceFactor, double capacitanceShare) {
        return new Deviation(
                0, new AllPulses(), 0, 0, 0, Optional.of(new TiredCapacitor(rail, resistanceFactor, capacitanceShare)));
    }
}
