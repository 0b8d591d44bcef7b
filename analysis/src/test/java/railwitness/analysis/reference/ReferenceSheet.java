package railwitness.analysis.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.ColdResistance;
import railwitness.analysis.design.Converter;
import railwitness.analysis.design.Decision;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Filter;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Input;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Rectifier;
import railwitness.analysis.design.Switches;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.design.Unit;
import railwitness.analysis.design.UnitLimits;

/** Reads the plain sheets of the reference set, as much of them as a person might know. */
public final class ReferenceSheet {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();

    private final Map<String, String> values = new LinkedHashMap<>();
    private final List<Rail> rails = new ArrayList<>();

    ReferenceSheet(List<String> lines) {
        String table = "";
        Map<String, String> rail = null;
        for (String line : lines) {
            if (line.startsWith("[[")) {
                rail = new LinkedHashMap<>();
            } else if (line.startsWith("[")) {
                table = line.substring(1, line.indexOf(']')) + ".";
            } else if (line.contains(" = ") && !line.startsWith("#")) {
                String[] parts = line.split(" = ");
                if (rail == null) {
                    values.put(table + parts[0], parts[1].replace("\"", ""));
                } else {
                    rail.put(parts[0], parts[1].replace("\"", ""));
                    if (rail.size() == 3) {
                        rails.add(new Rail(
                                rail.get("name"),
                                Double.parseDouble(rail.get("nominal_V")),
                                OptionalDouble.of(Double.parseDouble(rail.get("full_load_A")))));
                    }
                }
            }
        }
    }

    private OptionalDouble number(String key) {
        String text = values.get(key);
        return text == null ? UNKNOWN : OptionalDouble.of(Double.parseDouble(text));
    }

    Design design(Knowledge known) {
        boolean full = known == Knowledge.FULL;
        boolean partial = full || known == Knowledge.PARTIAL;
        boolean turns = known != Knowledge.MINIMAL;
        Converter converter = new Converter(
                FilterInput.of(values.get("converter.filter")),
                false,
                partial ? number("converter.frequency_Hz") : UNKNOWN,
                partial ? number("converter.duty") : UNKNOWN,
                UNKNOWN,
                full ? number("converter.control_A") : UNKNOWN);
        Input input = new Input(
                number("input.nominal_V").orElseThrow(),
                number("input.lowest_V"),
                number("input.highest_V"),
                UNKNOWN,
                UNKNOWN,
                partial ? number("input.capacitor_uF") : UNKNOWN,
                full ? number("input.capacitor_esr_ohm") : UNKNOWN,
                UNKNOWN);
        Transformer transformer = new Transformer(
                (int) number("transformer.primary_turns").orElseThrow(),
                (int) number("transformer.secondary_turns").orElseThrow(),
                full ? number("transformer.primary_resistance_ohm") : UNKNOWN,
                full ? number("transformer.secondary_resistance_ohm") : UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                full ? number("transformer.inductance_per_turn_squared_nH") : UNKNOWN,
                full ? number("transformer.core_loss_W") : UNKNOWN,
                full ? number("transformer.leakage_nH") : UNKNOWN);
        Optional<Switches> switches = partial
                ? Optional.of(new Switches(
                        number("switches.on_resistance_ohm"),
                        UNKNOWN,
                        full ? number("switches.gate_and_switching_W") : UNKNOWN))
                : Optional.empty();
        Optional<Rectifier> rectifier = partial
                ? Optional.of(new Rectifier(
                        number("rectifier.drop_V"), full ? number("rectifier.slope_ohm") : UNKNOWN, UNKNOWN))
                : Optional.empty();
        Optional<Filter> filter = partial
                ? Optional.of(new Filter(
                        number("filter.capacitor_uF"),
                        full ? number("filter.capacitor_esr_ohm") : UNKNOWN,
                        UNKNOWN,
                        number("filter.bleeder_ohm"),
                        number("filter.choke_uH"),
                        full ? number("filter.choke_resistance_ohm") : UNKNOWN))
                : Optional.empty();
        return new Design(
                new Unit(values.get("unit.name"), Optional.empty(), Optional.empty(), Optional.empty()),
                converter,
                input,
                turns ? Optional.of(transformer) : Optional.empty(),
                switches,
                rectifier,
                filter,
                rails,
                List.of(),
                UnitLimits.none(),
                ColdResistance.none(),
                Decision.GUARD_BAND_U,
                List.of());
    }

    /** How much the sheet knows. */
    public enum Knowledge {
        /** Everything. */
        FULL,
        /** What is printed on parts: turns, frequency, duty, switch, diode, capacitance, choke. */
        PARTIAL,
        /** Turns, kind of filter, input and load. */
        TURNS,
        /** Kind of filter, input, nominal rails and load. */
        MINIMAL
    }
}
