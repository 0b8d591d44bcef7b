package railwitness.logger.importing;

import java.util.Map;
import java.util.Optional;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * What a column holds: {@code <node>.<what>_<unit>}, such as {@code input.voltage_V} or {@code plus.ripple_mV}.
 *
 * @param factor from the column's unit to the SI unit
 */
record ColumnName(Channel channel, double factor) {
    private static final Map<String, Map<String, Double>> UNITS = Map.of(
            "V", Map.of("V", 1.0, "mV", 1e-3),
            "A", Map.of("A", 1.0, "mA", 1e-3),
            "W", Map.of("W", 1.0, "mW", 1e-3, "kW", 1e3),
            "ohm", Map.of("ohm", 1.0, "mohm", 1e-3, "kohm", 1e3),
            "degC", Map.of("degC", 1.0));

    /** Empty with no reason to be one of ours; throws IllegalArgumentException where it nearly is. */
    static Optional<ColumnName> of(String header) {
        int unitAt = header.lastIndexOf('_');
        if (unitAt < 0 || !header.contains(".")) {
            return Optional.empty();
        }
        Channel channel = Channel.of(header.substring(0, unitAt));
        Quantity quantity = channel.quantity();
        Double factor = UNITS.get(quantity.unit()).get(header.substring(unitAt + 1));
        if (factor == null) {
            throw new IllegalArgumentException("a " + quantity.word() + " must be in one of "
                    + String.join(
                            ", ",
                            UNITS.get(quantity.unit()).keySet().stream()
                                    .sorted()
                                    .toList()));
        }
        return Optional.of(new ColumnName(channel, factor));
    }
}
