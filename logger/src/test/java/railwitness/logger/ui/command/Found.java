package railwitness.logger.ui.command;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;

/** Findings as another program reads them. */
record Found(JsonNode json) {
    static Found in(Path session) {
        return new Found(Said.by("findings", session.toString(), "--json").json());
    }

    /** The figure's value; refused where it was not found. */
    double figure(String name, String rail) {
        return find(name, rail)
                .orElseThrow(() -> new AssertionError(name + " " + rail + " not found: " + json.get("not_found")));
    }

    Optional<Double> find(String name, String rail) {
        return each("figures")
                .filter(node -> node.get("name").asText().equals(name)
                                && node.get("rail").asText("").equals(rail == null ? "null" : rail)
                        || node.get("name").asText().equals(name)
                                && rail == null
                                && node.get("rail").isNull())
                .map(node -> node.get("value").asDouble())
                .findFirst();
    }

    JsonNode point(String stage, String step) {
        return each("points")
                .filter(node -> node.get("stage").asText().equals(stage)
                        && node.get("step").asText().equals(step))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no point " + stage + " " + step));
    }

    List<String> causes() {
        List<String> codes = new ArrayList<>();
        each("causes").forEach(node -> codes.add(node.get("code").asText()));
        return codes;
    }

    /** The cause named first, and those that are said not to be told apart from it. */
    List<String> firstOrAlike() {
        List<String> codes = new ArrayList<>(causes().subList(0, Math.min(1, causes().size())));
        json.at("/causes/0/alike").forEach(node -> codes.add(node.asText()));
        return codes;
    }

    String verdict() {
        return json.get("verdict").asText();
    }

    String state() {
        return json.get("session").get("state").asText();
    }

    private java.util.stream.Stream<JsonNode> each(String array) {
        return StreamSupport.stream(json.get(array).spliterator(), false);
    }
}
