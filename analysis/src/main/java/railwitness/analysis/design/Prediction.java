package railwitness.analysis.design;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the design sheet predicts at one operating point, in closed form. What hangs on a part that the sheet does not
 * give is not predicted: a rail is then missing among {@code railVolts}, and {@link #inputCurrent}, {@link #loss} and
 * {@link #efficiency} are empty.
 *
 * @param inputVolts at the unit's terminals, V
 * @param railVolts of each rail that can be predicted, with its sign, V
 * @param rippleRmsVolts of each rail over all frequencies, V; without those for which the sheet does not know enough
 * @param inputAmperes what the known parts draw, A; where not {@code complete} about the least that a sound unit needs
 *     (leakage gives a percent or two back in the fall of the pulses; circuit simulation)
 * @param outputWatts into the loads, W; the most where a rail is not predicted
 * @param lossWatts of the known parts, W
 * @param fluxTesla peak flux density; empty where area, frequency or duty are not known
 * @param leftOut keys of the sheet that were missing
 * @param complete whether the sheet gives every part that bears on input current and losses at this point
 */
public record Prediction(
        double inputVolts,
        Map<String, Double> railVolts,
        Map<String, Double> rippleRmsVolts,
        double inputAmperes,
        double outputWatts,
        Map<String, Double> lossWatts,
        OptionalDouble fluxTesla,
        List<String> leftOut,
        boolean complete) {
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
     * Highest voltage that any rail may reach without load: its turns ratio times the highest planned input, nothing
     * dropped. Ringing may add a few percent.
     *
     * @return V, a magnitude; empty where the sheet does not know the turns
     */
    public static OptionalDouble highestNoLoadRailVolts(Design design) {
        Input input = design.input();
        double highest = input.highestVolts().orElse(input.nominalVolts());
        return design.transformer().isEmpty()
                ? OptionalDouble.empty()
                : design.rails().stream()
                        .mapToDouble(rail -> design.ratio(rail).orElseThrow() * highest)
                        .max();
    }

    /** The rail with its sign, V; empty where the sheet does not give what it hangs on. */
    public OptionalDouble rail(String name) {
        return railVolts.containsKey(name) ? OptionalDouble.of(railVolts.get(name)) : OptionalDouble.empty();
    }

    /** Input current, A; empty where the sheet does not give every part that bears on it. */
    public OptionalDouble inputCurrent() {
        return complete ? OptionalDouble.of(inputAmperes) : OptionalDouble.empty();
    }

    /** All losses together, W; empty where the sheet does not give every part that bears on them. */
    public OptionalDouble loss() {
        return complete ? OptionalDouble.of(totalLossWatts()) : OptionalDouble.empty();
    }

    /** Input power of the known parts, W: the least where not {@code complete}. */
    public double inputWatts() {
        return inputVolts * inputAmperes;
    }

    /** Sum of the losses of the known parts, W. */
    public double totalLossWatts() {
        return lossWatts.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    /** Output over input power; empty where nothing is drawn, or where the losses are not all known. */
    public OptionalDouble efficiency() {
        return complete && inputWatts() > 0 ? OptionalDouble.of(outputWatts / inputWatts()) : OptionalDouble.empty();
    }
}
