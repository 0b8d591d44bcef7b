package railwitness.drivers.instrument;

import java.util.OptionalDouble;

/**
 * What the bench sheet says of a load.
 *
 * @param readsVoltage true when its voltage is read
 * @param besideMeter true when a meter reads the rail's voltage: the load's own then is a second witness at {@link #node()}
 * @param reversed true when its plus terminal is on the return, as on a negative rail: the voltage then gets a minus sign
 * @param resolutionAmps steps in which its current can be set, A
 */
public record LoadSetting(
        String rail,
        boolean readsVoltage,
        boolean besideMeter,
        boolean reversed,
        OptionalDouble highestAmps,
        OptionalDouble highestWatts,
        OptionalDouble resolutionAmps,
        int channel) {
    /** Where its voltage belongs: the rail, or the load at it. */
    public String node() {
        return besideMeter ? nodeBesideMeter(rail) : rail;
    }

    /** The node of what a load reads beside the rail's meter: {@code plus-load}. */
    public static String nodeBesideMeter(String rail) {
        return rail + "-load";
    }
}
