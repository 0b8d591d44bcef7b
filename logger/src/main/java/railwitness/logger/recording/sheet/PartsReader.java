package railwitness.logger.recording.sheet;

import java.util.Optional;
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
                known.number("primary_resistance_ohm", "one primary half, cold")
                        .between(0, 10)
                        .optionalNumber(),
                known.number("secondary_resistance_ohm", "one secondary half, cold")
                        .between(0, 1000)
                        .optionalNumber(),
                known.number("core_area_mm2", "effective area of the core")
                        .between(1, 100000)
                        .optionalNumber(),
                known.number("highest_flux_T", "flux density the core may reach")
                        .between(0.01, 2.5)
                        .optionalNumber(),
                known.number("inductance_per_turn_squared_nH", "inductance of one turn on the core")
                        .between(1, 1e6)
                        .optionalNumber(),
                known.number("core_loss_W", "core loss at nominal input")
                        .between(0, 1000)
                        .optionalNumber(),
                known.number("leakage_nH", "leakage in series with a rail, seen at the secondary")
                        .between(0, 1e6)
                        .optionalNumber()));
    }

    static Optional<Switches> switches(SheetTable t) {
        return t.present()
                ? Optional.of(new Switches(
                        t.number("on_resistance_ohm", "one side at 25 degC")
                                .between(0, 10)
                                .optionalNumber(),
                        t.number("rating_V", "highest voltage a switch may see")
                                .between(1, 10000)
                                .optionalNumber(),
                        t.number("gate_and_switching_W", "what switching costs")
                                .between(0, 1000)
                                .optionalNumber()))
                : Optional.empty();
    }

    static Optional<Rectifier> rectifier(SheetTable t) {
        return t.present()
                ? Optional.of(new Rectifier(
                        t.number("drop_V", "drop of a diode at small current")
                                .between(0, 5)
                                .optionalNumber(),
                        t.number("slope_ohm", "growth of the drop with current")
                                .between(0, 10)
                                .optionalNumber(),
                        t.number("rating_V", "highest reverse voltage of a diode")
                                .between(1, 10000)
                                .optionalNumber()))
                : Optional.empty();
    }

    static Optional<Filter> filter(SheetTable t) {
        return t.present()
                ? Optional.of(new Filter(
                        t.number("capacitor_uF", "filter capacitors of one rail together")
                                .between(0.1, 1e6)
                                .optionalNumber(),
                        t.number("capacitor_esr_ohm", "their equivalent series resistance")
                                .between(0, 100)
                                .optionalNumber(),
                        t.number("capacitor_rating_V", "their voltage rating")
                                .between(1, 1000)
                                .optionalNumber(),
                        t.number("bleeder_ohm", "resistor that empties the capacitors")
                                .between(1, 1e7)
                                .optionalNumber(),
                        t.number("choke_uH", "choke of one rail")
                                .between(0.01, 1e6)
                                .optionalNumber(),
                        t.number("choke_resistance_ohm", "its resistance")
                                .between(0, 100)
                                .optionalNumber()))
                : Optional.empty();
    }
}
