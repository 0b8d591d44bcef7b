package railwitness.analysis.converter;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A converter at one operating point.
 *
 * @param volts magnitude of each rail, V
 * @param free the same before ringing lifts it
 * @param rippleVolts rms of each rail's ripple over all frequencies, V
 * @param inputAmperes A
 * @param outputWatts into the loads, W
 * @param lossWatts by part, W
 * @param duty at which it runs
 */
public record Result(
        double[] volts,
        double[] free,
        double[] rippleVolts,
        double inputAmperes,
        double outputWatts,
        Map<String, Double> lossWatts,
        double duty) {
    public Result {
        lossWatts = Collections.unmodifiableMap(new LinkedHashMap<>(lossWatts));
    }
}
