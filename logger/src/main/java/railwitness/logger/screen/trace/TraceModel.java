package railwitness.logger.screen.trace;

import java.awt.Color;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.logger.screen.live.TraceKeeper;

/**
 * What one trace shows at one moment.
 *
 * @param title such as "+ rail"
 * @param value the last value with its unit
 * @param remark at the right of the title
 * @param colour of the trace
 * @param dash of the trace, 0 for none; tells rails of one colour apart
 * @param spans the steps that are seen, one after the other
 * @param limits beyond which the output goes off, each with its words
 * @param readings what was read
 */
public record TraceModel(
        String title,
        String value,
        String remark,
        Color colour,
        int dash,
        List<StepSpan> spans,
        List<LimitLine> limits,
        Optional<TraceKeeper> readings) {
    /** A limit on a trace. */
    public record LimitLine(String words, double value) {}

    public TraceModel {
        spans = List.copyOf(spans);
        limits = List.copyOf(limits);
    }

    static TraceModel empty() {
        return new TraceModel("", "", "", Color.GRAY, 0, List.of(), List.of(), Optional.empty());
    }

    double fromSeconds() {
        return spans.isEmpty() ? 0 : spans.get(0).fromSeconds();
    }

    double toSeconds() {
        return spans.isEmpty()
                ? 1
                : Math.max(fromSeconds() + 0.1, spans.get(spans.size() - 1).toSeconds());
    }

    OptionalDouble lowestPredicted() {
        return spans.stream().flatMapToDouble(span -> span.predicted().stream()).min();
    }

    OptionalDouble highestPredicted() {
        return spans.stream().flatMapToDouble(span -> span.predicted().stream()).max();
    }
}
