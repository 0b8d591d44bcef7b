package railwitness.logger.reporting.findings;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.transformer.Half;
import railwitness.analysis.transformer.Ratio.Polarity;
import railwitness.analysis.transformer.WoundReport;
import railwitness.analysis.uncertainty.Estimate;

/** The key {@code transformer} of the findings. */
final class WoundJson {
    private final SessionFindings session;

    WoundJson(SessionFindings session) {
        this.session = session;
    }

    ObjectNode node(WoundReport wound) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode windings = node.putArray("windings");
        wound.windings().forEach((half, one) -> {
            ObjectNode winding = windings.addObject().put("name", half.words());
            wound.meant()
                    .ifPresentOrElse(
                            meant -> winding.put(
                                    "turns", half.isPrimary() ? meant.primaryTurns() : meant.secondaryTurns()),
                            () -> winding.putNull("turns"));
            set(winding, "turns_counted", one.turns(), "1");
            set(winding, "resistance_20", one.ohms20(), "ohm");
        });
        ArrayNode ratios = node.putArray("ratios");
        ratio(ratios, wound, Half.SECONDARY_A, FigureName.HALF_A_RATIO);
        ratio(ratios, wound, Half.SECONDARY_B, FigureName.HALF_B_RATIO);
        ArrayNode polarity = node.putArray("polarity");
        pair(polarity, "primary", wound.primary());
        pair(polarity, "secondary", wound.secondary());
        set(node, "magnetising_inductance", wound.value(FigureName.MAGNETISING_INDUCTANCE), "H");
        set(node, "leakage_inductance", wound.value(FigureName.LEAKAGE_INDUCTANCE), "H");
        set(node, "core_loss", wound.value(FigureName.CORE_LOSS), "W");
        set(node, "knee_V", wound.value(FigureName.SATURATION_INPUT), "V");
        ArrayNode hot = node.putArray("hot");
        wound.value(FigureName.WINDING_TEMPERATURE).ifPresent(degC -> hot.addObject()
                .put("winding", Half.SECONDARY_A.words())
                .set("temperature", FindingsJson.estimate(degC, "degC")));
        ArrayNode faults = node.putArray("faults");
        wound.suspicions().forEach(one -> faults.addObject()
                .put("code", one.fault().code())
                .put("where", one.where())
                .put("reason", one.reason()));
        return node;
    }

    private static void ratio(ArrayNode ratios, WoundReport wound, Half half, FigureName name) {
        wound.value(name).ifPresent(value -> {
            ObjectNode node =
                    ratios.addObject().put("from", Half.PRIMARY_A.words()).put("to", half.words());
            node.set("value", FindingsJson.estimate(value, "1"));
            wound.meant()
                    .ifPresentOrElse(
                            meant -> node.put("expected", (double) meant.secondaryTurns() / meant.primaryTurns()),
                            () -> node.putNull("expected"));
        });
    }

    /** A pair of which nothing can be said is left out. */
    private static void pair(ArrayNode polarity, String pair, Polarity found) {
        if (found != Polarity.UNCLEAR) {
            polarity.addObject().put("pair", pair).put("as_meant", found == Polarity.ALIKE);
        }
    }

    private static void set(ObjectNode node, String key, Optional<Estimate> value, String unit) {
        value.ifPresentOrElse(found -> node.set(key, FindingsJson.estimate(found, unit)), () -> node.putNull(key));
    }
}
