package railwitness.logger.ui.screen.trace;

import java.awt.Color;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * What one trace shows at one moment.
 *
 * @param title such as "+ rail"
 * @param value the last value with its unit, or the one under the cursor
 * @param remark at the right of the title
 * @param stroke how it is drawn
 * @param fromSeconds left edge, s of the session
 * @param toSeconds right edge, after the left
 * @param spans the steps that are seen, one after the other
 * @param limits beyond which the output goes off, each with its words
 * @param cursor where a hairline stands, s
 * @param notes when a person wrote a remark, s
 * @param readings what was read
 */
public record TraceModel(
        String title,
        String value,
        String remark,
        Stroke stroke,
        double fromSeconds,
        double toSeconds,
        List<StepSpan> spans,
        List<LimitLine> limits,
        OptionalDouble cursor,
        List<Double> notes,
        Optional<TraceSource> readings) {
    /**
     * A limit on a trace.
     *
     * @param broken it is the one that ended the run: drawn whatever the axis would hold without it, and stronger
     */
    public record LimitLine(String words, double value, boolean broken) {}

    /**
     * How a trace is drawn.
     *
     * @param dash 0 for none; tells rails of one colour apart
     * @param leastRange an axis shows no less than this, in the trace's unit: what is smaller is noise
     * @param dots single readings stand out where they are far apart
     */
    public record Stroke(Color colour, int dash, double leastRange, boolean dots) {}

    private static final double LEAST_SECONDS = 1e-4;

    public TraceModel {
        spans = List.copyOf(spans);
        limits = List.copyOf(limits);
        notes = List.copyOf(notes);
        toSeconds = Math.max(toSeconds, fromSeconds + LEAST_SECONDS);
    }

    static TraceModel empty() {
        return new TraceModel(
                "",
                "",
                "",
                new Stroke(Color.GRAY, 0, 1, false),
                0,
                1,
                List.of(),
                List.of(),
                OptionalDouble.empty(),
                List.of(),
                Optional.empty());
    }

    /** Neither steps nor readings: an empty place. */
    boolean bare() {
        return spans.isEmpty() && readings.isEmpty();
    }

    OptionalDouble lowestPredicted() {
        return predicted().min();
    }

    OptionalDouble highestPredicted() {
        return predicted().max();
    }

    private DoubleStream predicted() {
        return spans.stream().flatMapToDouble(span -> span.predicted().stream());
    }
}
