package railwitness.analysis.cause;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A run that ended early: because the input took too much, because rails did not come up, or because one rose too high.
 *
 * @param stage in which it ended, as in a plan
 * @param inputAmperes what was drawn, A
 * @param remoteOn whether the unit's remote turn-on was on
 * @param lowRails rails that did not come up; empty where the input took too much
 * @param othersUp whether other rails did come up
 * @param highRailVolts magnitude of a rail that rose beyond its limit, V; empty where none did
 * @param lostWatts what a loaded step lost beyond what the parts may lose, W; empty where that did not end the run
 * @param evidence what else was measured
 */
public record EarlyEnding(
        String stage,
        double inputAmperes,
        boolean remoteOn,
        List<String> lowRails,
        boolean othersUp,
        OptionalDouble highRailVolts,
        OptionalDouble lostWatts,
        Evidence evidence) {
    public EarlyEnding {
        lowRails = List.copyOf(lowRails);
    }

    /** The same, with what else was measured. */
    public EarlyEnding with(Evidence measured) {
        return new EarlyEnding(stage, inputAmperes, remoteOn, lowRails, othersUp, highRailVolts, lostWatts, measured);
    }

    /** Rails did not come up. */
    public EarlyEnding(String stage, double inputAmperes, boolean remoteOn, List<String> lowRails, boolean othersUp) {
        this(
                stage,
                inputAmperes,
                remoteOn,
                lowRails,
                othersUp,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Evidence.none());
    }

    /** A rail rose beyond its limit before any load was drawn. */
    public static EarlyEnding tooHigh(String stage, double inputAmperes, double volts) {
        return new EarlyEnding(
                stage,
                inputAmperes,
                true,
                List.of(),
                true,
                OptionalDouble.of(Math.abs(volts)),
                OptionalDouble.empty(),
                Evidence.none());
    }

    /** A rail that had stood fell to next to nothing while it was loaded. */
    public static EarlyEnding fellUnderLoad(String stage, String rail, double volts) {
        Evidence fell = new Evidence(Map.of(rail, volts), false, true, false);
        return new EarlyEnding(
                stage, 0, true, List.of(rail), false, OptionalDouble.empty(), OptionalDouble.empty(), fell);
    }

    /**
     * A loaded step lost far more than the parts may lose.
     *
     * @param watts beyond what the parts may lose
     * @param amperes of the input
     * @param rails as they were last read
     */
    public static EarlyEnding lostUnderLoad(String stage, double watts, double amperes, Map<String, Double> rails) {
        Evidence read = new Evidence(rails, false, true, false);
        return new EarlyEnding(
                stage, amperes, true, List.of(), true, OptionalDouble.empty(), OptionalDouble.of(watts), read);
    }

    /** The input took too much. */
    public EarlyEnding(String stage, double inputAmperes, boolean remoteOn) {
        this(stage, inputAmperes, remoteOn, List.of(), false);
    }
}
