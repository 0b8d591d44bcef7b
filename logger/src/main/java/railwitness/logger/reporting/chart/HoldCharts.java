package railwitness.logger.reporting.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import railwitness.analysis.soak.Soak;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.store.Envelope;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.TimeSpan;

/** What a soak looked like: temperatures and rails over its time. Drawn from summaries, whatever its length. */
public final class HoldCharts {
    private static final int COLUMNS = 240;
    private static final int FITTED = 80;
    private static final double LONG_SECONDS = 2 * 3600;

    private final SessionFile file;
    private final List<String> rails;
    private final Optional<Soak> soak;

    /**
     * @param rails names of the rails, in the sheet's order
     * @param soak what the hold showed, where it could be worked out
     */
    public HoldCharts(SessionFile file, List<String> rails, Optional<Soak> soak) {
        this.file = file;
        this.rails = rails;
        this.soak = soak;
    }

    /** Temperatures with the fitted curve and its band, rails, efficiency; empty where the plan held nothing. */
    public List<Chart> all() {
        List<Chart> charts = new ArrayList<>();
        span().ifPresent(span -> {
            temperatures(span).ifPresent(charts::add);
            drift(span).ifPresent(charts::add);
            efficiency(span).ifPresent(charts::add);
        });
        return charts;
    }

    /** On a scale of its own, in per cent. */
    private Optional<Chart> efficiency(TimeSpan span) {
        return soak.flatMap(held -> Soak.efficiency(held.record())
                .flatMap(shares -> gathered(held, shares, span))
                .flatMap(curve -> drawn("Efficiency while held", "%", span, List.of(curve))));
    }

    private static Optional<Curve> gathered(Soak held, double[] shares, TimeSpan span) {
        double[] seconds = held.record().seconds();
        int each = Math.max(1, shares.length / COLUMNS);
        List<double[]> points = new ArrayList<>();
        int skipped = (int) (shares.length * 0.02);
        for (int i = skipped; i + each <= shares.length; i += each) {
            double sum = 0;
            int count = 0;
            for (int j = i; j < i + each; j++) {
                if (Double.isFinite(shares[j])) {
                    sum += 100 * shares[j];
                    count++;
                }
            }
            if (count > 0) {
                points.add(new double[] {across(seconds[i + each / 2], span), sum / count});
            }
        }
        return points.size() < 2
                ? Optional.empty()
                : Optional.of(Curve.measured(
                        "",
                        points.stream().mapToDouble(point -> point[0]).toArray(),
                        points.stream().mapToDouble(point -> point[1]).toArray(),
                        new double[points.size()],
                        OptionalInt.empty()));
    }

    private static double across(double seconds, TimeSpan span) {
        return (seconds - span.fromNanos() / 1e9) / (seconds(span) >= LONG_SECONDS ? 3600 : 60);
    }

    /** The fitted way of each place, on beyond the end where it has not come to rest, with its band. */
    private List<Curve> fitted(TimeSpan span) {
        List<Curve> curves = new ArrayList<>();
        soak.ifPresent(held -> held.temperatures().forEach(place -> {
            double end = seconds(span) * (place.reached() ? 1 : 1.3);
            double[] x = new double[FITTED];
            double[] middle = new double[FITTED];
            double[] low = new double[FITTED];
            double[] high = new double[FITTED];
            for (int i = 0; i < FITTED; i++) {
                double at = span.fromNanos() / 1e9 + end * i / (FITTED - 1);
                Estimate value = place.fit().at(at);
                double u = value.coverage(0.95).expanded();
                x[i] = across(at, span);
                middle[i] = value.value();
                low[i] = value.value() - u;
                high[i] = value.value() + u;
            }
            curves.add(Curve.predicted("fitted, with its band", x, middle, OptionalInt.empty()));
            curves.add(Curve.predicted("", x, low, OptionalInt.empty()));
            curves.add(Curve.predicted("", x, high, OptionalInt.empty()));
        }));
        return curves;
    }

    private Optional<TimeSpan> span() {
        if (soak.isPresent()) {
            return Optional.of(new TimeSpan(
                    Math.round(soak.get().record().fromSeconds() * 1e9),
                    Math.round(soak.get().record().toSeconds() * 1e9)));
        }
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
        if (!curves.isEmpty()) {
            curves.addAll(fitted(span));
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
