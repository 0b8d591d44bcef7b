package railwitness.logger.reporting.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.store.Envelope;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.TimeSpan;

/** What a soak looked like: temperatures and rails over its time. Drawn from summaries, whatever its length. */
public final class HoldCharts {
    private static final int COLUMNS = 240;
    private static final double LONG_SECONDS = 2 * 3600;

    private final SessionFile file;
    private final List<String> rails;

    /** @param rails names of the rails, in the sheet's order */
    public HoldCharts(SessionFile file, List<String> rails) {
        this.file = file;
        this.rails = rails;
    }

    /** Temperatures, then rails; empty where the plan held nothing. */
    public List<Chart> all() {
        List<Chart> charts = new ArrayList<>();
        span().ifPresent(span -> {
            temperatures(span).ifPresent(charts::add);
            drift(span).ifPresent(charts::add);
        });
        return charts;
    }

    private Optional<TimeSpan> span() {
        List<StepEntry> held = file.steps().stream()
                .filter(step -> step.stage().equals("hold") && step.average().isPresent())
                .toList();
        if (held.isEmpty()) {
            return Optional.empty();
        }
        long from = held.stream().mapToLong(StepEntry::beginNanos).min().orElseThrow();
        long to = held.stream()
                .mapToLong(step -> step.average().orElseThrow().toNanos())
                .max()
                .orElseThrow();
        return from < to ? Optional.of(new TimeSpan(from, to)) : Optional.empty();
    }

    private Optional<Chart> temperatures(TimeSpan span) {
        List<Curve> curves = new ArrayList<>();
        for (Channel channel : file.channels()) {
            if (channel.quantity() == Quantity.TEMPERATURE) {
                curve(channel, span, channel.node(), false, OptionalInt.empty(), 0)
                        .ifPresent(curves::add);
            }
        }
        return drawn("Temperature while held", "\u00b0C", span, curves);
    }

    /** Each rail's change from its beginning, in percent of it. */
    private Optional<Chart> drift(TimeSpan span) {
        List<Curve> curves = new ArrayList<>();
        for (int i = 0; i < rails.size(); i++) {
            Channel channel = new Channel(rails.get(i), Quantity.VOLTAGE);
            curve(channel, span, rails.get(i) + " rail", true, OptionalInt.of(i), 0.02)
                    .ifPresent(curves::add);
        }
        return drawn("Rails while held, change since its begin", "%", span, curves);
    }

    private static Optional<Chart> drawn(String title, String unit, TimeSpan span, List<Curve> curves) {
        return curves.isEmpty()
                ? Optional.empty()
                : Optional.of(new Chart(title, unit, timeUnit(span), curves, List.of()));
    }

    private static String timeUnit(TimeSpan span) {
        return seconds(span) >= LONG_SECONDS ? "h" : "min";
    }

    private static double seconds(TimeSpan span) {
        return (span.toNanos() - span.fromNanos()) / 1e9;
    }

    /** @param settling share of the span at its begin that is left out of a drift's reference */
    private Optional<Curve> curve(
            Channel channel, TimeSpan span, String name, boolean relative, OptionalInt rail, double settling) {
        Envelope envelope = file.envelope(channel, span, COLUMNS);
        double perUnit = seconds(span) >= LONG_SECONDS ? 3600 : 60;
        List<double[]> drawn = new ArrayList<>();
        int skipped = (int) (envelope.columns() * settling);
        for (int i = skipped; i < envelope.columns(); i++) {
            if (envelope.measured()[i] > 0) {
                double middle = (envelope.edgeNanos()[i] + envelope.edgeNanos()[i + 1]) / 2.0;
                drawn.add(new double[] {(middle - span.fromNanos()) / 1e9 / perUnit, envelope.mean()[i]});
            }
        }
        if (drawn.size() < 2) {
            return Optional.empty();
        }
        double begin = drawn.get(0)[1];
        if (relative && begin == 0) {
            return Optional.empty();
        }
        double[] x = drawn.stream().mapToDouble(point -> point[0]).toArray();
        double[] y = drawn.stream()
                .mapToDouble(point -> relative ? 100 * (point[1] - begin) / begin : point[1])
                .toArray();
        return Optional.of(Curve.measured(name.toLowerCase(Locale.ROOT), x, y, new double[x.length], rail));
    }
}
