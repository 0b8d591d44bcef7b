package railwitness.drivers.instrument;

import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * What a meter reads and how. Ranges are in the unit of its function: volts for a meter on a shunt.
 *
 * @param function what the meter itself measures
 * @param range range in use; the instrument's own choice where empty
 * @param standbyRange smaller range for the drain of standby
 * @param lineCycles integration time in cycles of the mains
 * @param shuntOhms resistance of the shunt, where a voltage is read as a current
 * @param mainsHz frequency of the mains, for the integration time
 * @param channel of the instrument, 1 or more
 */
public record MeterSetting(
        Channel reads,
        Quantity function,
        OptionalDouble range,
        OptionalDouble standbyRange,
        OptionalDouble lineCycles,
        OptionalDouble shuntOhms,
        double mainsHz,
        int channel) {
    public MeterSetting {
        boolean shunt = reads.quantity() == Quantity.CURRENT && function == Quantity.VOLTAGE;
        if (shunt != shuntOhms.isPresent()) {
            throw new IllegalArgumentException(
                    "a shunt belongs to a meter that reads a current by its voltage function, and only to such a one");
        }
        if (!shunt && reads.quantity() != function) {
            throw new IllegalArgumentException("function " + function.word() + " cannot read " + reads);
        }
    }

    /** What the meter's number must be divided by to give the channel's unit. */
    public double perUnit() {
        return shuntOhms.orElse(1);
    }

    /**
     * The range for a value to come: the smallest stated one that holds it, else the largest.
     *
     * @param highest largest magnitude expected, in the channel's unit
     */
    public OptionalDouble rangeFor(double highest) {
        if (standbyRange.isPresent() && Math.abs(highest) * perUnit() <= standbyRange.getAsDouble()) {
            return standbyRange;
        }
        return range;
    }
}
