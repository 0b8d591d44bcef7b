package railwitness.logger.reporting.comparing;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.text.VisibleText;

/** A comparison as JSON, for other programs: keys are only added. */
public final class ComparisonJson {
    private static final double COVERAGE = 0.95;

    private final JsonNodeFactory nodes = JsonNodeFactory.instance;
    private final Comparison comparison;

    private ComparisonJson(Comparison comparison) {
        this.comparison = comparison;
    }

    /** Indented, UTF-8 text, one line feed at its end. */
    public static String of(Comparison comparison) {
        try {
            return VisibleText.json(new ObjectMapper()
                            .enable(SerializationFeature.INDENT_OUTPUT)
                            .writeValueAsString(new ComparisonJson(comparison).root())
                            .replace("\r\n", "\n"))
                    + "\n";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private ObjectNode root() {
        ObjectNode root = nodes.objectNode();
        ArrayNode sessions = root.putArray("sessions");
        for (int i = 0; i < comparison.sessions().size(); i++) {
            sessions.add(session(i, comparison.sessions().get(i)));
        }
        root.put("judged", comparison.judged());
        root.put("real_changes", comparison.real());
        ArrayNode figures = root.putArray("figures");
        comparison.figures().forEach(figure -> figures.add(compared(figure)));
        ArrayNode steps = root.putArray("steps");
        comparison.steps().forEach(step -> {
            ObjectNode node = steps.addObject().put("stage", step.stage()).put("step", step.step());
            ArrayNode values = node.putArray("values");
            step.values().forEach(value -> values.add(compared(value)));
        });
        ArrayNode charts = root.putArray("control_charts");
        comparison.charts().forEach(chart -> charts.add(chart(chart)));
        unlike(root.putArray("unlike"));
        return root;
    }

    private ObjectNode session(int place, SessionFindings session) {
        ObjectNode node = nodes.objectNode()
                .put("as", Comparison.letter(place))
                .put("id", session.head().id())
                .put("started", session.head().startedWall().toString())
                .put("state", session.state().word())
                .put("rehearsal", session.head().rehearsal())
                .put("unit", session.head().unitName())
                .put("serial", session.head().unitSerial())
                .put("condition", session.head().unitCondition())
                .put("verdict", session.findings().verdict().words());
        ArrayNode against = node.putArray("contradictions");
        session.findings().contradictions().forEach(one -> against.addObject()
                .put("code", one.code().word())
                .put("text", one.text())
                .put("check", one.check()));
        return node;
    }

    private ObjectNode compared(Compared compared) {
        ObjectNode node = nodes.objectNode().put("name", compared.name());
        compared.rail().ifPresentOrElse(rail -> node.put("rail", rail), () -> node.putNull("rail"));
        node.put("unit", compared.unit());
        ArrayNode values = node.putArray("values");
        for (int i = 0; i < compared.values().size(); i++) {
            value(
                    values,
                    compared.values().get(i),
                    compared.notes().isEmpty() ? "" : compared.notes().get(i),
                    compared.expected().isEmpty()
                            ? Optional.empty()
                            : compared.expected().get(i));
        }
        ArrayNode changes = node.putArray("changes");
        for (int i = 1; i < compared.values().size(); i++) {
            Optional<Change> change = compared.changes().get(i);
            if (change.isPresent()) {
                changes.add(change(i, change.get()));
            }
        }
        return node;
    }

    private static void value(ArrayNode values, Optional<Estimate> value, String note, Optional<Estimate> expected) {
        if (value.isEmpty()) {
            values.addNull();
            return;
        }
        ObjectNode node = values.addObject().put("value", value.get().value());
        if (value.get().known()) {
            node.put("u", value.get().u());
            node.put("U", value.get().coverage(COVERAGE).expanded());
        } else {
            node.putNull("u");
            node.putNull("U");
        }
        if (!note.isEmpty()) {
            node.put("at", note);
        }
        expected.ifPresent(foreseen ->
                node.putObject("expected").put("value", foreseen.value()).put("u", foreseen.u()));
    }

    private ObjectNode change(int later, Change change) {
        ObjectNode node = nodes.objectNode()
                .put("of", Comparison.letter(later))
                .put("against", Comparison.letter(0))
                .put("difference", change.difference().value());
        if (change.answer() == Answer.NOT_KNOWN) {
            node.putNull("u").putNull("U");
        } else {
            node.put("u", change.difference().u())
                    .put("k", change.coverage().k())
                    .put("U", change.coverage().expanded())
                    .put("u_if_nothing_were_shared", change.apart());
        }
        return node.put("answer", change.answer().words());
    }

    private ObjectNode chart(SisterChart chart) {
        ObjectNode node = nodes.objectNode().put("name", chart.figure().name());
        chart.figure().rail().ifPresentOrElse(rail -> node.put("rail", rail), () -> node.putNull("rail"));
        node.put("unit", chart.figure().unit())
                .put("mean", chart.chart().centre())
                .put("lower", chart.chart().lower())
                .put("upper", chart.chart().upper())
                .put("mean_range", chart.chart().meanRange())
                .put("range_limit", chart.chart().upperRange());
        ArrayNode outside = node.putArray("outside");
        chart.chart().outside().forEach(place -> outside.add(Comparison.letter(place)));
        ArrayNode jumps = node.putArray("jumps");
        chart.chart().jumps().forEach(place -> jumps.add(Comparison.letter(place)));
        node.putObject("furthest")
                .put("of", Comparison.letter(chart.furthest().place()))
                .put("distance", chart.furthest().distance())
                .put("critical", chart.furthest().critical())
                .put("outlying", chart.furthest().outlying());
        return node;
    }

    private void unlike(ArrayNode array) {
        comparison.unlike().forEach((place, charts) -> {
            ObjectNode node = array.addObject().put("of", Comparison.letter(place));
            ArrayNode figures = node.putArray("figures");
            charts.forEach(chart -> figures.add(chart.figure().label()));
        });
    }
}
