package railwitness.analysis.design;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the design sheet predicts at one operating point, in closed form. Parts the sheet does not know are left out of
 * it and named.
 *
 * @param inputVolts at the unit's terminals, V
 * @param railVolts of each rail, with its sign, V
 * @param rippleRmsVolts of each rail over all frequencies, V; empty where the filter capacitor is not known
 * @param inputAmperes A
 * @param outputWatts into the loads, W
 * @param lossWatts by part, W
 * @param fluxTesla peak flux density; empty where area or frequency are not known
 * @param leftOut keys of the sheet that were missing
 */
public record Prediction(
        double inputVolts,
        Map<String, Double> railVolts,
        Map<String, Double> rippleRmsVolts,
        double inputAmperes,
        double outputWatts,
        Map<String, Double> lossWatts,
        OptionalDouble fluxTesla,
        List<String> leftOut) {
    public Prediction {
        railVolts = Collections.unmodifiableMap(new LinkedHashMap<>(railVolts));
        rippleRmsVolts = Collections.unmodifiableMap(new LinkedHashMap<>(rippleRmsVolts));
        lossWatts = Collections.unmodifiableMap(new LinkedHashMap<>(lossWatts));
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Predicts a healthy unit.
     *
     * @param inputVolts at the unit's terminals, V, above 0
     * @param loadAmperes through each rail's load, A, 0 or more; rails not named carry none
     * @return empty where the sheet does not know the turns
     */
    public static Optional<Prediction> of(Design design, double inputVolts, Map<String, Double> loadAmperes) {
        return of(design, Deviation.none(), inputVolts, loadAmperes);
    }

    /** Predicts a unit that differs from its sheet. */
    public static Optional<Prediction> of(
            Design design, Deviation deviation, double inputVolts, Map<String, Double> loadAmperes) {
        Allowed.positive("input voltage", inputVolts);
        return design.transformer()
                .map(transformer -> new Forecast(design, transformer, deviation).at(inputVolts, loadAmperes));
    }

    /**
     * Highest voltage a rail may reach without load: turns ratio times the highest planned input, nothing dropped. Ringing
     * may add a few percent.
     *
     * @return V, a magnitude; empty where the sheet does not know the turns
     */
    public static OptionalDouble highestNoLoadRailVolts(Design design) {
        if (design.transformer().isEmpty()) {
            return OptionalDouble.empty();
        }
        Input input = design.input();
        double highest = input.highestVolts().orElse(input.nominalVolts());
        return OptionalDouble.of(design.transformer().get().ratio() * highest);
    }

    public double inputWatts() {
        return inputVolts * inputAmperes;
    }

    /** Sum of the losses by part, W. */
    public double totalLossWatts() {
        return lossWatts.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    /** Output over input power; empty where nothing is drawn. */
    public OptionalDouble efficiency() {
        return inputWatts() > 0 ? OptionalDouble.of(outputWatts / inputWatts()) : OptionalDouble.empty();
    }
}
