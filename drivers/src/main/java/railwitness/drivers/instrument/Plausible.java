package railwitness.drivers.instrument;

import java.util.EnumMap;
import java.util.Map;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * What no channel of this bench reads: a spoilt exponent, or the reply to another question. Common practice, no source:
 * far beyond what 12 V converters and their instruments know.
 */
final class Plausible {
    private static final Map<Quantity, Double> HIGHEST = new EnumMap<>(Map.of(
            Quantity.VOLTAGE, 2e3,
            Quantity.RIPPLE, 2e3,
            Quantity.CURRENT, 2e3,
            Quantity.TEMPERATURE, 2e3));

    private static final double HIGHEST_ELSE = 1e9;

    private Plausible() {}

    /** @param value in the channel's unit */
    static boolean is(Channel channel, double value) {
        return Math.abs(value) < HIGHEST.getOrDefault(channel.quantity(), HIGHEST_ELSE);
    }
}
