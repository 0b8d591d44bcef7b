package railwitness.analysis.soak;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.uncertainty.Estimate;

/**
 * What was read while a load was held, in columns of equal length.
 *
 * @param name of the hold, such as {@code 75 %}
 * @param fromSeconds begin of the hold, s of the session
 * @param toSeconds its end, s
 * @param seconds middle of each column, rising
 * @param temperatures by place, the room left out
 * @param ambient the room, where it was measured
 * @param statedAmbient the room as the bench sheet states it, degC
 * @param rails voltages by rail
 * @param ripples by rail
 * @param inputVolts at the terminals or the supply
 * @param inputWatts into the unit; empty where it was not read
 * @param outputWatts into all loads; empty where it was not read
 * @param loss at the end of the hold, W, with its uncertainty
 * @param outputs number of output voltages
 * @param breaks times at which running began again after an interruption, s
 * @param cycleSeconds length of one cycle, where the load was cycled, else empty
 * @param excursions how often a channel left its band
 * @param gaps how often readings were missing for longer than usual
 * @param rests how often the output went off within a cycle and came on again by first power
 * @param others what was read in the session's other holds, the longer first; they have no others
 */
public record SoakRecord(
        String name,
        double fromSeconds,
        double toSeconds,
        double[] seconds,
        Map<String, SoakSeries> temperatures,
        Optional<SoakSeries> ambient,
        OptionalDouble statedAmbient,
        Map<String, SoakSeries> rails,
        Map<String, SoakSeries> ripples,
        Optional<SoakSeries> inputVolts,
        Optional<double[]> inputWatts,
        Optional<double[]> outputWatts,
        Optional<Estimate> loss,
        int outputs,
        double[] breaks,
        OptionalDouble cycleSeconds,
        int excursions,
        int gaps,
        int rests,
        List<SoakRecord> others) {
    public SoakRecord {
        temperatures = Collections.unmodifiableMap(new LinkedHashMap<>(temperatures));
        rails = Collections.unmodifiableMap(new LinkedHashMap<>(rails));
        ripples = Collections.unmodifiableMap(new LinkedHashMap<>(ripples));
        others = List.copyOf(others);
    }

    /** How often the unit was powered again in the midst of it: after an interruption, or after an off period. */
    public int restarts() {
        return breaks.length + rests;
    }

    /** The same beside other holds. */
    public SoakRecord with(List<SoakRecord> beside) {
        return new SoakRecord(
                name,
                fromSeconds,
                toSeconds,
                seconds,
                temperatures,
                ambient,
                statedAmbient,
                rails,
                ripples,
                inputVolts,
                inputWatts,
                outputWatts,
                loss,
                outputs,
                breaks,
                cycleSeconds,
                excursions,
                gaps,
                rests,
                beside);
    }
}
