package railwitness.analysis.cause;

/**
 * A run that ended early because the input took too much.
 *
 * @param stage in which it ended, as in a plan
 * @param inputAmperes what was drawn, A
 * @param remoteOn whether the unit's remote turn-on was on
 */
public record Ending(String stage, double inputAmperes, boolean remoteOn) {}
