package railwitness.analysis.transformer;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * What was read at a wound transformer alone on the bench; all may be empty.
 *
 * @param ohms by winding, current one way and the other
 * @param degC of the windings while these were read
 * @param volts of each winding with primary A driven, V
 * @param primariesInSeries across both primary halves in series, V
 * @param secondariesInSeries across both secondary halves in series, V
 * @param oneTurn across one turn of wire laid through the hole, V
 * @param open primary A driven through a resistor, all others open
 * @param shorted primary A driven through the same resistor, both secondary halves shorted
 * @param hertz of the drive, Hz
 * @param senseOhms the resistor, ohm
 * @param ringHertz frequency at which primary A rings with the capacitor, Hz
 * @param ringFarads the capacitor, F
 * @param cooling resistance of secondary A one way, read after the output went off, with the time since
 */
public record WoundReadings(
        Map<Half, BothWays> ohms,
        Optional<Estimate> degC,
        Map<Half, Estimate> volts,
        Optional<Estimate> primariesInSeries,
        Optional<Estimate> secondariesInSeries,
        Optional<Estimate> oneTurn,
        Optional<Driven> open,
        Optional<Driven> shorted,
        Estimate hertz,
        Optional<Estimate> senseOhms,
        Optional<Estimate> ringHertz,
        Optional<Estimate> ringFarads,
        List<SwitchOff.Reading> cooling) {
    public WoundReadings {
        ohms = Map.copyOf(ohms);
        volts = Map.copyOf(volts);
        cooling = List.copyOf(cooling);
    }

    /**
     * A winding's voltage with the current one way and the other.
     *
     * @param forwardVolts with its sign, V
     * @param forwardAmperes above 0, A
     * @param backwardVolts with its sign, V
     * @param backwardAmperes below 0, A
     */
    public record BothWays(
            Estimate forwardVolts, Estimate forwardAmperes, Estimate backwardVolts, Estimate backwardAmperes) {}

    /**
     * Root mean square voltages of a winding and a resistor in series.
     *
     * @param winding across the winding, V
     * @param resistor across the resistor, V
     * @param both across both, V; where it was read
     */
    public record Driven(Estimate winding, Estimate resistor, Optional<Estimate> both) {}
}
