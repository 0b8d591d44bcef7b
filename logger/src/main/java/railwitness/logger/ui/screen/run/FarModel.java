package railwitness.logger.ui.screen.run;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What is read from two metres.
 *
 * @param step the step that goes on, in words
 * @param of such as "step 5 of 12"
 * @param lines one for each rail and one for the input current
 * @param load what is set, with its unit; empty where none is
 * @param loads the current on each rail
 * @param doing settling, averaging or holding
 * @param left how long that still takes
 * @param near the steps round about, for whoever comes closer
 */
record FarModel(
        String step,
        String of,
        List<Line> lines,
        String load,
        String loads,
        String doing,
        String left,
        List<Near> near) {
    /**
     * One figure.
     *
     * @param name what it is, and its place among the colours
     * @param now as it is read, or three dots while it is not
     * @param expected in pencil; empty where nothing is predicted
     * @param difference of the two, in words
     * @param room how far the nearest limit is, in words
     * @param beyond the limit is broken
     */
    record Line(
            String name,
            int colour,
            String now,
            String unit,
            String expected,
            String difference,
            String room,
            boolean beyond,
            Strip strip) {}

    /**
     * Where it stands between its limits.
     *
     * @param now and the others in the figure's unit, without sign
     */
    record Strip(OptionalDouble now, OptionalDouble expected, OptionalDouble low, OptionalDouble high) {}

    /**
     * A step in the column at the left.
     *
     * @param values of the rails; one word where it goes on
     */
    record Near(String step, List<String> values, boolean live, boolean pencil) {}
}
