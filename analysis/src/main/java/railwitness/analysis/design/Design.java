package railwitness.analysis.design;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The whole design sheet. Unit, converter, input and rails are always there; the parts only as far as they are known.
 *
 * @param unit the unit under test
 * @param converter how it converts
 * @param input its input side
 * @param transformer turns and what else is known of it
 * @param switches the switching transistors
 * @param rectifier the diodes
 * @param filter capacitors and bleeders of each rail
 * @param rails one or more, names distinct
 * @param connected what stays connected in the test ({@code [connected] items})
 * @param limits beyond these the output goes off
 * @param coldResistance what an ohmmeter must show before power
 * @param decision how uncertainty enters a verdict
 * @param requirements what the unit must keep to
 */
public record Design(
        Unit unit,
        Converter converter,
        Input input,
        Optional<Transformer> transformer,
        Optional<Switches> switches,
        Optional<Rectifier> rectifier,
        Optional<Filter> filter,
        List<Rail> rails,
        List<String> connected,
        UnitLimits limits,
        ColdResistance coldResistance,
        Decision decision,
        List<SheetRequirement> requirements) {
    public Design {
        rails = List.copyOf(rails);
        connected = List.copyOf(connected);
        requirements = List.copyOf(requirements);
        requireRails(rails);
        requireKnownRails(rails, requirements);
    }

    /** A sheet that knows only what most people know: the kind of filter, the input, the turns and the rails. */
    public static Design of(Unit unit, Converter converter, Input input, Transformer transformer, List<Rail> rails) {
        return new Design(
                unit,
                converter,
                input,
                Optional.of(transformer),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                rails,
                List.of(),
                UnitLimits.none(),
                ColdResistance.none(),
                Decision.GUARD_BAND_U,
                List.of());
    }

    /** The rail of that name, if the sheet has it. */
    public Optional<Rail> rail(String name) {
        return rails.stream().filter(rail -> rail.name().equals(name)).findFirst();
    }

    /** Turns of the half that feeds the rail over those of the primary half; empty where the sheet does not know them. */
    public OptionalDouble ratio(Rail rail) {
        return transformer
                .map(known -> OptionalDouble.of(
                        rail.secondaryTurns().orElse(known.secondaryTurns()) / (double) known.primaryTurns()))
                .orElse(OptionalDouble.empty());
    }

    /** Whether the rail is held at its nominal voltage, by the converter or by a regulator of its own. */
    public boolean regulates(Rail rail) {
        return rail.regulated().orElse(converter.regulated());
    }

    /** Rating of the rail's filter capacitors, V. */
    public OptionalDouble capacitorRatingVolts(Rail rail) {
        return rail.capacitorRatingVolts().isPresent()
                ? rail.capacitorRatingVolts()
                : filter.map(Filter::capacitorRatingVolts).orElse(OptionalDouble.empty());
    }

    private static void requireKnownRails(List<Rail> rails, List<SheetRequirement> requirements) {
        List<String> names = rails.stream().map(Rail::name).toList();
        for (SheetRequirement requirement : requirements) {
            requirement.rail().filter(name -> !names.contains(name)).ifPresent(name -> {
                throw new IllegalArgumentException(
                        "requirement's rail '" + name + "' must be one of: " + String.join(", ", names));
            });
        }
    }

    private static void requireRails(List<Rail> rails) {
        if (rails.isEmpty()) {
            throw new IllegalArgumentException("rail: the sheet must name at least one rail");
        }
        Set<String> seen = new HashSet<>();
        for (Rail rail : rails) {
            if (!seen.add(rail.name())) {
                throw new IllegalArgumentException("rail name '" + rail.name() + "' must not appear twice");
            }
        }
    }
}
