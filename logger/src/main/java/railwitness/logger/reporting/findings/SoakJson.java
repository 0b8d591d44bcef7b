package railwitness.logger.reporting.findings;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import railwitness.analysis.soak.HoldDrift;
import railwitness.analysis.soak.PlaceTemperature;
import railwitness.analysis.soak.RuleMet;
import railwitness.analysis.soak.Soak;
import railwitness.analysis.soak.SoakFigures;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;

/** The key {@code soak} of the findings. */
final class SoakJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final BiFunction<Estimate, String, ObjectNode> estimate;

    /** @param estimate writes a value in a unit as the rest of the findings does */
    SoakJson(BiFunction<Estimate, String, ObjectNode> estimate) {
        this.estimate = estimate;
    }

    ObjectNode of(Soak soak, List<OperatingPoint> points) {
        ObjectNode node = of(soak);
        ArrayNode others = node.putArray("others");
        for (Soak other : soak.others()) {
            ObjectNode one = of(other);
            ArrayNode figures = one.putArray("figures");
            SoakFigures.of(other, points).found().forEach(figure -> figures.add(figure(figure)));
            others.add(one);
        }
        return node;
    }

    private ObjectNode figure(Figure figure) {
        ObjectNode node = NODES.objectNode().put("name", figure.name().word());
        figure.rail().ifPresentOrElse(rail -> node.put("rail", rail), () -> node.putNull("rail"));
        node.set("value", estimate.apply(figure.value(), figure.unit()));
        return node;
    }

    private ObjectNode of(Soak soak) {
        ObjectNode node = NODES.objectNode()
                .put("hold", soak.record().name())
                .put("from_s", soak.record().fromSeconds())
                .put("to_s", soak.record().toSeconds());
        ArrayNode places = node.putArray("temperatures");
        soak.temperatures().forEach(place -> places.add(place(place)));
        put(node, "thermal_resistance", soak.thermalResistance(), "K/W");
        ArrayNode drifts = node.putArray("drifts");
        soak.drifts().forEach(drift -> drifts.add(drift(drift)));
        ArrayNode rules = node.putArray("stability");
        soak.stability().forEach(rule -> rules.add(rule(rule)));
        return node.put("excursions", soak.record().excursions())
                .put("gaps", soak.record().gaps())
                .put("restarts", soak.record().restarts())
                .put("off_periods", soak.record().rests());
    }

    private ObjectNode place(PlaceTemperature place) {
        ObjectNode node = NODES.objectNode().put("channel", place.place() + ".temperature");
        node.set("final", estimate.apply(place.end(), "degC"));
        put(node, "rise", place.rise(), "K");
        put(node, "time_constant_s", place.timeConstantSeconds(), "s");
        node.put("reached", place.reached());
        node.set("last", estimate.apply(place.last(), "degC"));
        put(node, "to_final_s", place.secondsToFinal(), "s");
        place.fit()
                .knownWithin(SoakText.WELL_ENOUGH_KELVIN)
                .ifPresentOrElse(
                        at -> node.put("known_within_half_K_at_s", at), () -> node.putNull("known_within_half_K_at_s"));
        return node;
    }

    private ObjectNode drift(HoldDrift drift) {
        ObjectNode node = NODES.objectNode().put("name", drift.name());
        drift.rail().ifPresentOrElse(rail -> node.put("rail", rail), () -> node.putNull("rail"));
        node.set("per_hour", estimate.apply(drift.perHour(), "%/h"));
        put(node, "by_temperature", drift.byTemperature(), "%/K");
        put(node, "ageing_per_hour", drift.ageingPerHour(), "%/h");
        return node;
    }

    private static ObjectNode rule(RuleMet rule) {
        ObjectNode node = NODES.objectNode().put("rule", rule.rule());
        if (rule.metAtSeconds().isPresent()) {
            return node.put("met_at_s", rule.metAtSeconds().getAsDouble());
        }
        return node.putNull("met_at_s");
    }

    private void put(ObjectNode node, String key, Optional<Estimate> value, String unit) {
        value.ifPresentOrElse(known -> node.set(key, estimate.apply(known, unit)), () -> node.putNull(key));
    }
}
