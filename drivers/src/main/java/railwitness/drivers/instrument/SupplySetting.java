package railwitness.drivers.instrument;

import java.util.OptionalDouble;

/**
 * What the bench sheet says of a supply.
 *
 * @param drivesRemote true when it also switches the unit's remote turn-on line
 * @param remoteChannel its channel that does so
 * @param remoteVolts voltage on that line, V
 * @param remoteAmps current limit of that line, A
 */
public record SupplySetting(
        OptionalDouble highestVolts,
        OptionalDouble highestAmps,
        int channel,
        boolean drivesRemote,
        int remoteChannel,
        double remoteVolts,
        double remoteAmps) {}
