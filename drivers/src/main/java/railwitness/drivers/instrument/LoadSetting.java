package railwitness.drivers.instrument;

import java.util.OptionalDouble;

/**
 * What the bench sheet says of a load.
 *
 * @param readsVoltage true when its voltage reading stands for the rail's
 * @param reversed true when its plus terminal is on the return, as on a negative rail: the voltage then gets a minus sign
 * @param resolutionAmps steps in which its current can be set, A
 */
public record LoadSetting(
        String rail,
        boolean readsVoltage,
        boolean reversed,
        OptionalDouble highestAmps,
        OptionalDouble highestWatts,
        OptionalDouble resolutionAmps,
        int channel) {}
