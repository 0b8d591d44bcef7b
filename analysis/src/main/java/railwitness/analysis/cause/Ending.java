package railwitness.analysis.cause;

import java.util.List;

/**
 * A run that ended early: because the input took too much, or because rails did not come up.
 *
 * @param stage in which it ended, as in a plan
 * @param inputAmperes what was drawn, A
 * @param remoteOn whether the unit's remote turn-on was on
 * @param lowRails rails that did not come up; empty where the input took too much
 * @param othersUp whether other rails did come up
 */
public record Ending(String stage, double inputAmperes, boolean remoteOn, List<String> lowRails, boolean othersUp) {
    public Ending {
        lowRails = List.copyOf(lowRails);
    }

    /** The input took too much. */
    public Ending(String stage, double inputAmperes, boolean remoteOn) {
        this(stage, inputAmperes, remoteOn, List.of(), false);
    }
}
