package railwitness.logger.recording.importing;

import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * What a column holds: {@code <node>.<what>_<unit>}, such as {@code input.voltage_V} or {@code plus.ripple_mV}; the unit
 * may also stand in brackets: {@code input.voltage [V]}, {@code input.voltage (V)}.
 *
 * @param unit as written; empty where the cells carry it
 */
record ColumnName(Channel channel, Optional<String> unit) {
    private static final Map<String, Map<String, Double>> UNITS = Map.of(
            "V", Map.of("V", 1.0, "mV", 1e-3),
            "A", Map.of("A", 1.0, "mA", 1e-3),
            "W", Map.of("W", 1.0, "mW", 1e-3, "kW", 1e3),
            "ohm", Map.of("ohm", 1.0, "mohm", 1e-3, "kohm", 1e3),
            "degC", Map.of("degC", 1.0));
    private static final Pattern NAME = Pattern.compile("([^_\\s\\[(]*)(?:_(.*)|\\s*\\[(.*)]|\\s*\\((.*)\\))?");

    /**
     * Empty with no reason to be one of ours; throws IllegalArgumentException where it nearly is.
     *
     * @param unitsInCells the name then has no unit
     */
    static Optional<ColumnName> of(String header, boolean unitsInCells) {
        Matcher parts = NAME.matcher(header);
        if (!header.contains(".") || !parts.matches()) {
            return Optional.empty();
        }
        Optional<String> unit = Optional.ofNullable(parts.group(2))
                .or(() -> Optional.ofNullable(parts.group(3)))
                .or(() -> Optional.ofNullable(parts.group(4)))
                .map(String::strip);
        if (unit.isPresent() == unitsInCells) {
            throw new IllegalArgumentException(
                    unitsInCells
                            ? "the cells carry the units, so the column's name must not"
                            : "its unit is missing, such as " + header
                                    + "_V; or do the cells carry it (--units cells)?");
        }
        ColumnName name = new ColumnName(Channel.of(parts.group(1)), unit);
        unit.ifPresent(name::factor);
        return Optional.of(name);
    }

    /** From that unit to the SI unit; IllegalArgumentException naming those that are known. */
    double factor(String written) {
        Quantity quantity = channel.quantity();
        Double factor = UNITS.get(quantity.unit()).get(written);
        if (factor == null) {
            throw new IllegalArgumentException("a " + quantity.word() + " must be in one of "
                    + String.join(
                            ", ",
                            UNITS.get(quantity.unit()).keySet().stream()
                                    .sorted()
                                    .toList()));
        }
        return factor;
    }
}
