package railwitness.drivers.instrument;

import java.util.OptionalDouble;

/**
 * What the bench sheet says of a supply.
 *
 * @param resolutionVolts steps in which its voltage can be set, V
 * @param resolutionAmps steps in which its current limit can be set, A
 * @param drivesRemote true when it also switches the unit's remote turn-on line
 * @param remoteChannel its channel that does so
 * @param remoteVolts voltage on that line, V
 * @param remoteAmps current limit of that line, A
 */
public record SupplySetting(
        OptionalDouble highestVolts,
        OptionalDouble highestAmps,
        OptionalDouble resolutionVolts,
        OptionalDouble resolutionAmps,
        int channel,
        boolean drivesRemote,
        int remoteChannel,
        double remoteVolts,
        double remoteAmps) {}
