package railwitness.logger.recording.sheet;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import railwitness.analysis.design.Band;
import railwitness.analysis.design.ColdResistance;
import railwitness.analysis.design.Converter;
import railwitness.analysis.design.Decision;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Input;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.SheetRequirement;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.design.Unit;
import railwitness.analysis.design.UnitLimits;
import railwitness.analysis.transformer.ToroidParts;
import railwitness.analysis.transformer.WoundDesign;
import railwitness.drivers.sheet.SheetTable;

/** Reads a design sheet. Parts that the person does not know are left out of the sheet and of the design. */
public final class DesignReader {
    private DesignReader() {}

    /** To be given to {@link railwitness.drivers.sheet.Sheet#read}. */
    public static Design design(SheetTable root) {
        return wound(root).design();
    }

    /** The same with what it says of core and wire. */
    public static WoundDesign wound(SheetTable root) {
        Unit unit = unit(root.table("unit", "the unit under test"));
        SheetTable converter = root.table("converter", "how it converts");
        Converter converts = converter(converter);
        Optional<Boolean> softStart = converter
                .flag("soft_start", "whether the duty grows slowly at the start")
                .optional();
        Input input = input(root.table("input", "its input"));
        Optional<Transformer> transformer = PartsReader.transformer(root.table("transformer", "turns and core"));
        ToroidParts parts = ToroidReader.parts(
                root.table("core", "the ring that the transformer is wound on"),
                root.table("winding", "its wire and insulation"),
                softStart);
        return new WoundDesign(design(root, unit, converts, input, transformer), parts);
    }

    private static Design design(
            SheetTable root, Unit unit, Converter converter, Input input, Optional<Transformer> transformer) {
        return new Design(
                unit,
                converter,
                input,
                transformer,
                PartsReader.switches(root.table("switches", "the switching transistors")),
                PartsReader.rectifier(root.table("rectifier", "the diodes")),
                PartsReader.filter(root.table("filter", "capacitors, bleeder and choke of each rail")),
                root.tables("rail", "one for each rail").stream()
                        .map(DesignReader::rail)
                        .toList(),
                root.table("connected", "what stays connected in the test")
                        .texts("items", "one text for each thing")
                        .orElse(List.of()),
                limits(root.table("limits", "beyond these the output goes off")),
                cold(root.table("cold_resistance", "what an ohmmeter must show before power")),
                root.table("decision", "how uncertainty enters a verdict")
                        .choice("rule", "decision rule", Decision.values(), Decision::word)
                        .orElse(Decision.GUARD_BAND_U),
                root.tables("requirement", "what the unit must keep to").stream()
                        .map(DesignReader::requirement)
                        .toList());
    }

    private static Unit unit(SheetTable t) {
        return new Unit(
                t.text("name", "what the unit is").required(),
                t.text("serial", "serial number").optional(),
                t.choice("condition", "state in which it is tested", Unit.Condition.values(), Unit.Condition::word)
                        .optional(),
                t.text("work_done", "what was repaired").optional());
    }

    private static Converter converter(SheetTable t) {
        t.text("drive", "how the primary is driven").oneOf("push-pull").orElse("push-pull");
        return new Converter(
                t.choice("filter", "what the rectifier feeds", FilterInput.values(), FilterInput::word)
                        .required(),
                t.flag("regulated", "whether the unit holds its rails itself").orElse(false),
                t.number("frequency_Hz", "frequency of the full transformer cycle, not of the oscillator")
                        .between(1000, 1_000_000)
                        .optionalNumber(),
                t.number("duty", "share of the cycle in which one switch is on")
                        .between(0.01, 0.5)
                        .optionalNumber(),
                t.number("start_V", "input at which the unit starts")
                        .between(1, 60)
                        .optionalNumber(),
                t.number("control_A", "what drive and control draw")
                        .between(0, 10)
                        .optionalNumber());
    }

    private static Input input(SheetTable t) {
        return new Input(
                t.number("nominal_V", "nominal input voltage").between(1, 60).required(),
                t.number("lowest_V", "lowest planned input").between(1, 60).optionalNumber(),
                t.number("highest_V", "highest planned input").between(1, 60).optionalNumber(),
                t.number("highest_A", "highest input current by design; the supply's limit")
                        .between(0.1, 1000)
                        .optionalNumber(),
                t.number("fuse_A", "fuse at the unit's input")
                        .between(0.1, 1000)
                        .optionalNumber(),
                t.number("capacitor_uF", "input capacitor").between(0.1, 1e6).optionalNumber(),
                t.number("capacitor_esr_ohm", "its equivalent series resistance")
                        .between(0, 10)
                        .optionalNumber(),
                t.number("capacitor_rating_V", "its voltage rating")
                        .between(1, 1000)
                        .optionalNumber());
    }

    private static Rail rail(SheetTable t) {
        return new Rail(
                t.text("name", "name of the rail in every channel")
                        .matching("[a-z][a-z0-9-]*", "lower-case letters, digits and hyphens")
                        .required(),
                t.number("nominal_V", "nominal voltage with its sign")
                        .between(-500, 500)
                        .allow(v -> v != 0, "not 0")
                        .required(),
                t.number("full_load_A", "rated load").between(0.001, 1000).optionalNumber(),
                t.whole(
                                "secondary_turns",
                                "turns of one half that feed this rail, if not those of the transformer table")
                        .between(1, 10000)
                        .optional()
                        .map(OptionalInt::of)
                        .orElse(OptionalInt.empty()),
                t.flag("regulated", "whether this rail is held at its nominal voltage, if not as the converter")
                        .optional(),
                t.number("capacitor_rating_V", "voltage rating of its filter capacitors, if not the filter table's")
                        .between(1, 1000)
                        .optionalNumber(),
                t.number("limit_high_V", "magnitude above which the output goes off, for this rail")
                        .between(1, 1000)
                        .optionalNumber(),
                t.number("limit_low_V", "magnitude once up below which the output goes off, for this rail")
                        .between(0.1, 1000)
                        .optionalNumber());
    }

    private static UnitLimits limits(SheetTable t) {
        return new UnitLimits(
                t.number("input_A", "input current").between(0.01, 1000).optionalNumber(),
                t.number("no_load_input_A", "input current without load")
                        .between(0.001, 1000)
                        .optionalNumber(),
                t.number("standby_A", "input current with the remote turn-on off")
                        .between(0.00001, 100)
                        .optionalNumber(),
                t.number(
                                "rail_high_V",
                                "magnitude of any rail, highest; never above what a rail's capacitors and turns allow")
                        .between(1, 1000)
                        .optionalNumber(),
                t.number("rail_low_V", "magnitude of a rail once up, lowest")
                        .between(0, 1000)
                        .optionalNumber(),
                t.number("imbalance_V", "difference of the rails' magnitudes")
                        .between(0.01, 1000)
                        .optionalNumber(),
                t.number("heatsink_degC", "heat sink").between(20, 200).optionalNumber(),
                t.number("extra_loss_W", "loss beyond the predicted one")
                        .between(0.1, 10000)
                        .optionalNumber(),
                t.number("touch_V", "rails below this count as discharged")
                        .between(0.1, 60)
                        .optionalNumber());
    }

    private static ColdResistance cold(SheetTable t) {
        return new ColdResistance(
                t.number("input_ohm_at_least", "across the input")
                        .between(0.001, 1e9)
                        .optionalNumber(),
                t.number("switch_ohm_at_least", "drain to source of each switch bank")
                        .between(0.001, 1e9)
                        .optionalNumber(),
                t.number("rail_ohm_at_least", "each rail to 0 V")
                        .between(0.001, 1e9)
                        .optionalNumber());
    }

    private static SheetRequirement requirement(SheetTable t) {
        return new SheetRequirement(
                t.choice("figure", "which figure is judged", FigureName.values(), FigureName::word)
                        .required(),
                t.text("rail", "of which rail; left out: of each").optional(),
                t.number("at_least", "lower limit in the figure's unit")
                        .between(-1e9, 1e9)
                        .optionalNumber(),
                t.number("at_most", "upper limit in the figure's unit")
                        .between(-1e9, 1e9)
                        .optionalNumber(),
                t.numbers("band_Hz", "band in which a ripple limit is meant")
                        .between(0, 1e9)
                        .count(2, 2)
                        .optional()
                        .filter(band -> band.size() == 2)
                        .map(band -> new Band(band.get(0), band.get(1))));
    }
}
