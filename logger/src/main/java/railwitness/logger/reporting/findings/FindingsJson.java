package railwitness.logger.reporting.findings;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.analysis.expected.Deviation;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.supply.RippleWaveform;
import railwitness.analysis.uncertainty.Budget;
import railwitness.analysis.uncertainty.Coverage;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.text.VisibleText;

/** Findings as JSON, as {@code docs/findings.md} describes them: other programs read it, so keys are only added. */
public final class FindingsJson {
    private static final double COVERAGE = 0.95;
    private static final int LINES = 20;

    private final JsonNodeFactory nodes = JsonNodeFactory.instance;
    private final SessionFindings session;

    private FindingsJson(SessionFindings session) {
        this.session = session;
    }

    /** Indented, UTF-8 text, one line feed at its end. */
    public static String of(SessionFindings session) {
        return text(new FindingsJson(session).root());
    }

    private static String text(ObjectNode root) {
        try {
            return VisibleText.json(new ObjectMapper()
                            .enable(SerializationFeature.INDENT_OUTPUT)
                            .writeValueAsString(root)
                            .replace("\r\n", "\n"))
                    + "\n";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Only these figures, each as it stands in the whole. */
    public static String of(List<Figure> figures) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode array = root.putArray("figures");
        figures.forEach(figure -> array.add(figure(figure)));
        return text(root);
    }

    private ObjectNode root() {
        ObjectNode root = nodes.objectNode();
        root.set("session", head());
        root.set("unit", unit());
        root.set("points", array(session.findings().points(), this::point));
        root.set("figures", array(session.findings().figures(), this::withExpected));
        root.set("not_found", array(session.findings().notFound(), this::notFound));
        root.set("verdicts", array(session.findings().verdicts(), this::verdict));
        root.set("contradictions", array(session.findings().contradictions(), this::contradiction));
        root.set("deviations", array(session.findings().against().deviations(), this::deviation));
        root.put("explained", session.findings().against().explained().word());
        root.set("causes", array(session.findings().causes(), this::cause));
        session.findings()
                .soak()
                .ifPresentOrElse(
                        soak -> root.set(
                                "soak",
                                new SoakJson(FindingsJson::estimate)
                                        .of(soak, session.findings().points())),
                        () -> root.putNull("soak"));
        session.wound()
                .ifPresentOrElse(
                        wound -> root.set("transformer", new WoundJson(session).node(wound)),
                        () -> root.putNull("transformer"));
        session.readInTurn()
                .ifPresentOrElse(read -> root.set("readings", readings(read)), () -> root.putNull("readings"));
        root.set("events", array(session.events(), this::event));
        ObjectNode waveforms = root.putObject("waveforms");
        session.waveforms().forEach((rail, wave) -> waveforms.set(rail, waveform(wave)));
        root.put("verdict", session.findings().verdict().words());
        return root;
    }

    private ObjectNode readings(ReadInTurn read) {
        ObjectNode node = nodes.objectNode();
        ArrayNode together = node.putArray("together");
        read.together().forEach(channel -> together.add(channel.toString()));
        ArrayNode inTurn = node.putArray("in_turn");
        read.inTurn().forEach(channel -> inTurn.add(channel.toString()));
        return node.put("text", read.words());
    }

    private ObjectNode head() {
        return nodes.objectNode()
                .put("id", session.head().id())
                .put("started", session.head().startedWall().toString())
                .put(
                        "ended",
                        session.head()
                                .startedWall()
                                .plusNanos(session.endedNanos())
                                .toString())
                .put("state", session.state().word())
                .put("rehearsal", session.head().rehearsal())
                .put("chain", session.chain().kind().word());
    }

    private ObjectNode unit() {
        return nodes.objectNode()
                .put("name", session.head().unitName())
                .put("serial", session.head().unitSerial())
                .put("condition", session.head().unitCondition());
    }

    private ObjectNode point(OperatingPoint point) {
        ObjectNode node = nodes.objectNode()
                .put("stage", point.stage())
                .put("step", point.step())
                .put("count", point.count())
                .put("from_s", point.fromSeconds())
                .put("to_s", point.toSeconds())
                .put("settled", point.settled());
        session.waitedSeconds(point).ifPresent(waited -> node.put("waited_s", waited));
        node.set("input", nodes.objectNode());
        ((ObjectNode) node.get("input"))
                .<ObjectNode>set("voltage", estimate(point.input().voltage(), "V"))
                .<ObjectNode>set("current", estimate(point.input().current(), "A"))
                .set("power", estimate(point.input().power(), "W"));
        ObjectNode rails = node.putObject("rails");
        point.rails().forEach((name, rail) -> rails.set(name, rail(rail)));
        ObjectNode temperatures = node.putObject("temperatures");
        point.temperatures().forEach((name, value) -> temperatures.set(name, estimate(value, "degC")));
        node.set("output_power", estimate(point.outputPower(), "W"));
        node.set("loss", estimate(point.loss(), "W"));
        node.set("efficiency", optional(point.efficiency(), "1"));
        node.put("input_measured", point.inputSource().words());
        ObjectNode expected = node.putObject("expected");
        session.findings()
                .against()
                .at(point)
                .values()
                .forEach((what, value) -> expected.set(what, estimate(value, Deviation.unit(what))));
        return node;
    }

    private ObjectNode rail(RailPoint rail) {
        ObjectNode node = nodes.objectNode();
        node.set("voltage", estimate(rail.voltage(), "V"));
        node.set("current", estimate(rail.current(), "A"));
        node.set("power", estimate(rail.power(), "W"));
        node.set("ripple_rms", optional(rail.rippleRms(), "V"));
        return node;
    }

    private com.fasterxml.jackson.databind.JsonNode optional(Optional<Estimate> value, String unit) {
        return value.<com.fasterxml.jackson.databind.JsonNode>map(known -> estimate(known, unit))
                .orElse(nodes.nullNode());
    }

    /** u is null until the accuracy behind a value is known; the scatter alone stands beside it then. */
    static ObjectNode estimate(Estimate value, String unit) {
        ObjectNode node = JsonNodeFactory.instance.objectNode().put("value", value.value());
        if (value.known()) {
            node.put("u", value.u());
        } else {
            node.putNull("u");
        }
        return node.put("unit", unit);
    }

    private ObjectNode withExpected(Figure figure) {
        ObjectNode node = figure(figure);
        node.set(
                "expected",
                optional(
                        session.findings()
                                .against()
                                .figure(figure.name(), figure.rail())
                                .map(Figure::value),
                        figure.unit()));
        return node;
    }

    private ObjectNode deviation(Deviation deviation) {
        ObjectNode node = nodes.objectNode().put("what", deviation.what());
        putRail(node, deviation.rail());
        node.put("stage", deviation.stage()).put("step", deviation.step());
        node.set("measured", estimate(deviation.measured(), deviation.unit()));
        node.set("expected", estimate(deviation.expected(), deviation.unit()));
        return node.put("times_u", deviation.timesU());
    }

    private static ObjectNode figure(Figure figure) {
        ObjectNode node = named(figure.name().word(), figure.rail())
                .put("value", figure.value().value());
        if (figure.value().known()) {
            Coverage coverage = figure.value().coverage(COVERAGE);
            node.put("u", figure.value().u());
            node.put("unit", figure.unit());
            node.put("k", coverage.k());
            node.put("U", coverage.expanded());
            node.put("k_from", coverage.how());
        } else {
            node.putNull("u");
            node.put("unit", figure.unit());
            node.putNull("k");
            node.putNull("U");
            node.put("scatter", figure.value().u());
        }
        node.put("at", figure.at());
        node.put("definition", figure.definition());
        ArrayNode contributions = node.putArray("contributions");
        Budget.of(figure.label(), figure.value(), figure.unit())
                .rows()
                .forEach(row -> contributions.add(contribution(row)));
        return node;
    }

    private static ObjectNode contribution(Budget.Row row) {
        ObjectNode node = JsonNodeFactory.instance
                .objectNode()
                .put("name", row.quantity())
                .put("u", row.contribution())
                .put("distribution", row.distribution())
                .put("own_u", row.u())
                .put("own_unit", row.unit())
                .put("sensitivity", row.sensitivity());
        if (Double.isInfinite(row.degreesOfFreedom())) {
            return node.putNull("degrees_of_freedom");
        }
        return node.put("degrees_of_freedom", row.degreesOfFreedom());
    }

    private ObjectNode waveform(RippleWaveform wave) {
        ObjectNode node = nodes.objectNode();
        node.set("peak_to_peak", estimate(wave.peakToPeak(), "V"));
        node.set("rms", estimate(wave.rms(), "V"));
        number(node, "at_switching_V", wave.atCycleVolts());
        number(node, "at_twice_V", wave.atTwiceVolts());
        number(node, "band_Hz", wave.bandwidthHz());
        ArrayNode spectrum = node.putArray("lines");
        wave.spectrum()
                .peaks(LINES)
                .forEach(line ->
                        spectrum.add(nodes.objectNode().put("hz", line.hertz()).put("V", line.volts())));
        return node;
    }

    private static void number(ObjectNode node, String key, OptionalDouble value) {
        if (value.isPresent()) {
            node.put(key, value.getAsDouble());
        } else {
            node.putNull(key);
        }
    }

    private ObjectNode notFound(NotFound missing) {
        return named(missing.name().word(), missing.rail()).put("reason", missing.reason());
    }

    private ObjectNode verdict(Verdict verdict) {
        ObjectNode node = nodes.objectNode()
                .put("requirement", verdict.requirement().name())
                .put("figure", verdict.requirement().figure());
        putRail(node, verdict.requirement().rail());
        node.put("limit", verdict.requirement().limit().words());
        node.put("outcome", verdict.outcome().words());
        if (verdict.probability().isPresent()) {
            node.put("probability", verdict.probability().getAsDouble());
        } else {
            node.putNull("probability");
        }
        return node.put("reason", verdict.reason());
    }

    private ObjectNode contradiction(Contradiction contradiction) {
        return nodes.objectNode()
                .put("code", contradiction.code().word())
                .put("text", contradiction.text())
                .put("check", contradiction.check());
    }

    private ObjectNode cause(Cause cause) {
        ObjectNode node = nodes.objectNode().put("code", cause.code().word()).put("cause", cause.text());
        putRail(node, cause.rail());
        cause.place().ifPresentOrElse(place -> node.put("place", place), () -> node.putNull("place"));
        node.put("share", cause.share());
        node.put("fit", cause.fit());
        texts(node.putArray("for"), cause.supports());
        texts(node.putArray("against"), cause.against());
        texts(node.putArray("check_next"), cause.checks());
        texts(
                node.putArray("alike"),
                cause.alike().stream().map(code -> code.word()).toList());
        return node;
    }

    private ObjectNode event(EventEntry event) {
        return nodes.objectNode()
                .put("at_s", event.nanos() / 1e9)
                .put("what", event.what())
                .put("text", event.text());
    }

    private static ObjectNode named(String name, Optional<String> rail) {
        ObjectNode node = JsonNodeFactory.instance.objectNode().put("name", name);
        putRail(node, rail);
        return node;
    }

    private static void putRail(ObjectNode node, Optional<String> rail) {
        if (rail.isPresent()) {
            node.put("rail", rail.get());
        } else {
            node.putNull("rail");
        }
    }

    private static void texts(ArrayNode node, List<String> texts) {
        texts.forEach(node::add);
    }

    private <T> ArrayNode array(List<T> items, java.util.function.Function<T, ObjectNode> form) {
        ArrayNode array = nodes.arrayNode();
        items.forEach(item -> array.add(form.apply(item)));
        return array;
    }
}
