package railwitness.logger.recording.sheet;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Filter;
import railwitness.analysis.design.Rectifier;
import railwitness.analysis.design.Switches;
import railwitness.analysis.design.Transformer;
import railwitness.drivers.sheet.SheetTable;

/** Reads the parts of a unit, each only where the sheet has it. */
final class PartsReader {
    private PartsReader() {}

    static Optional<Transformer> transformer(SheetTable t) {
        var transformer = t.present() ? Optional.of(t) : Optional.<SheetTable>empty();
        return transformer.map(known -> new Transformer(
                known.whole("primary_turns", "turns of one primary half")
                        .between(1, 1000)
                        .required(),
                known.whole("secondary_turns", "turns of one secondary half")
                        .between(1, 10000)
                        .required(),
                optional(known, "primary_resistance_ohm", "one primary half, cold", 0, 10),
                optional(known, "secondary_resistance_ohm", "one secondary half, cold", 0, 1000),
                optional(known, "core_area_mm2", "effective area of the core", 1, 100000),
                optional(known, "highest_flux_T", "flux density the core may reach", 0.01, 2.5),
                optional(known, "inductance_per_turn_squared_nH", "inductance of one turn on the core", 1, 1e6),
                optional(known, "core_loss_W", "core loss at nominal input", 0, 1000),
                optional(known, "leakage_nH", "leakage in series with a rail, seen at the secondary", 0, 1e6)));
    }

    static Optional<Switches> switches(SheetTable t) {
        return t.present()
                ? Optional.of(new Switches(
                        optional(t, "on_resistance_ohm", "one side at 25 degC", 0, 10),
                        optional(t, "rating_V", "highest voltage a switch may see", 1, 10000),
                        optional(t, "gate_and_switching_W", "what switching costs", 0, 1000)))
                : Optional.empty();
    }

    static Optional<Rectifier> rectifier(SheetTable t) {
        return t.present()
                ? Optional.of(new Rectifier(
                        optional(t, "drop_V", "drop of a diode at small current", 0, 5),
                        optional(t, "slope_ohm", "growth of the drop with current", 0, 10),
                        optional(t, "rating_V", "highest reverse voltage of a diode", 1, 10000)))
                : Optional.empty();
    }

    static Optional<Filter> filter(SheetTable t) {
        return t.present()
                ? Optional.of(new Filter(
                        optional(t, "capacitor_uF", "filter capacitors of one rail together", 0.1, 1e6),
                        optional(t, "capacitor_esr_ohm", "their equivalent series resistance", 0, 100),
                        optional(t, "capacitor_rating_V", "their voltage rating", 1, 1000),
                        optional(t, "bleeder_ohm", "resistor that empties the capacitors", 1, 1e7),
                        optional(t, "choke_uH", "choke of one rail", 0.01, 1e6),
                        optional(t, "choke_resistance_ohm", "its resistance", 0, 100)))
                : Optional.empty();
    }

    /* Empty where the sheet does not give it. */
    private static OptionalDouble optional(SheetTable t, String key, String meaning, double least, double most) {
        return t.number(key, meaning).between(least, most).optionalNumber();
    }
}
