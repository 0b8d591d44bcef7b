package railwitness.logger.recording.sheet;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.transformer.CoreMaterial;
import railwitness.analysis.transformer.InsulationClass;
import railwitness.analysis.transformer.Materials;
import railwitness.analysis.transformer.ToroidParts;
import railwitness.analysis.transformer.Wire;
import railwitness.drivers.sheet.SheetTable;

/** Reads what a design sheet says of core and wire of a toroid, each key only where the sheet has it. */
final class ToroidReader {
    private static final String THICKNESS = "_mm are two words for one thing; keep one of them";

    private ToroidReader() {}

    /** @param softStart as the converter's table has it */
    static ToroidParts parts(SheetTable core, SheetTable winding, Optional<Boolean> softStart) {
        return new ToroidParts(
                size(core),
                material(core),
                wire(winding, "primary"),
                wire(winding, "secondary"),
                winding.number("ambient_degC", "air around the transformer in the unit")
                        .between(-20, 100)
                        .optionalNumber(),
                winding.choice(
                                "insulation_class",
                                "of wire and tape: A 105, E 120, B 130, F 155, H 180 degC",
                                InsulationClass.values(),
                                InsulationClass::name)
                        .optional(),
                softStart);
    }

    private static Optional<ToroidParts.Size> size(SheetTable core) {
        OptionalDouble outer = millimetres(core, "outer_mm", "outer diameter of the ring");
        OptionalDouble inner = millimetres(core, "inner_mm", "inner diameter of the ring");
        OptionalDouble height = millimetres(core, "height_mm", "height of one ring");
        int pieces = core.whole("pieces", "rings stacked on one another")
                .between(1, 10)
                .orElse(1);
        List<OptionalDouble> all = List.of(outer, inner, height);
        if (all.stream().noneMatch(OptionalDouble::isPresent)) {
            return Optional.empty();
        }
        List<String> keys = List.of("outer_mm", "inner_mm", "height_mm");
        for (int i = 0; i < keys.size(); i++) {
            if (all.get(i).isEmpty()) {
                core.fault(keys.get(i), "is missing; a ring needs outer and inner diameter and height");
                return Optional.empty();
            }
        }
        if (inner.getAsDouble() >= outer.getAsDouble()) {
            core.fault("inner_mm", "must be below outer_mm");
            return Optional.empty();
        }
        return Optional.of(new ToroidParts.Size(
                outer.getAsDouble() * 1e-3, inner.getAsDouble() * 1e-3, pieces * height.getAsDouble() * 1e-3));
    }

    private static OptionalDouble millimetres(SheetTable t, String key, String meaning) {
        return t.number(key, meaning).between(1, 1000).optionalNumber();
    }

    private static Optional<CoreMaterial> material(SheetTable core) {
        Optional<CoreMaterial> named = core.choice(
                        "material",
                        "what the core is made of",
                        Materials.all().toArray(new CoreMaterial[0]),
                        CoreMaterial::name)
                .optional();
        OptionalDouble k = core.number("loss_k", "Steinmetz k of its data sheet, W/m^3 with Hz and T")
                .between(1e-6, 1e9)
                .optionalNumber();
        OptionalDouble alpha = core.number("loss_alpha", "Steinmetz exponent of frequency")
                .between(0.5, 3)
                .optionalNumber();
        OptionalDouble beta = core.number("loss_beta", "Steinmetz exponent of flux density")
                .between(1, 4)
                .optionalNumber();
        OptionalDouble cold = core.number("saturation_cold_T", "flux density it bears at 25 degC")
                .between(0.01, 2.5)
                .optionalNumber();
        OptionalDouble hot = core.number("saturation_hot_T", "flux density it bears at 100 degC")
                .between(0.01, 2.5)
                .optionalNumber();
        OptionalDouble permeability = core.number("permeability", "initial, relative")
                .between(1, 100_000)
                .optionalNumber();
        if (cold.isPresent() && hot.isPresent() && hot.getAsDouble() > cold.getAsDouble()) {
            core.fault("saturation_hot_T", "must not be above saturation_cold_T");
            return named;
        }
        long loss = List.of(k, alpha, beta).stream()
                .filter(OptionalDouble::isPresent)
                .count();
        if (loss == 1 || loss == 2) {
            core.fault("loss_k", "loss_alpha and loss_beta belong together; give all three or none");
            return named;
        }
        boolean own = List.of(k, cold, hot, permeability).stream().anyMatch(OptionalDouble::isPresent);
        return named.or(() -> own ? Materials.named("power ferrite") : Optional.empty())
                .map(material -> material.with(k, alpha, beta, cold, hot, permeability));
    }

    private static Optional<Wire> wire(SheetTable winding, String half) {
        OptionalDouble thickness = winding.number(half + "_mm", "bare copper of one strand of a " + half + " half")
                .between(0.02, 10)
                .optionalNumber();
        Optional<Integer> gauge = winding.whole(half + "_awg", "the same as American wire gauge")
                .between(0, 50)
                .optional();
        int strands = winding.whole(half + "_strands", "strands side by side in a " + half + " half")
                .between(1, 10_000)
                .orElse(1);
        if (thickness.isPresent() && gauge.isPresent()) {
            winding.fault(half + "_awg", "and " + half + THICKNESS);
            return Optional.empty();
        }
        return thickness.isPresent()
                ? Optional.of(new Wire(thickness.getAsDouble() * 1e-3, strands))
                : gauge.map(number -> Wire.awg(number, strands));
    }
}
