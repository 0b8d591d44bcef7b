package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import railwitness.analysis.design.Design;
import railwitness.analysis.soak.Excursions;
import railwitness.analysis.soak.SoakRecord;
import railwitness.analysis.soak.SoakSeries;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.points.ChannelEstimates;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.store.Envelope;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.TimeSpan;

/** What was read while a load was held, from the summaries: a hold of days is read as quickly as one of minutes. */
public final class SoakReader {
    /** Means over a hold: enough for its fits and its pictures. */
    private static final int COLUMNS = 1500;

    private static final int READINGS_EACH = 3;
    private static final int LEAST_COLUMNS = 12;
    private static final Set<String> ROOM = Set.of("ambient", "room");
    private static final double RAIL_SHARE = 0.005;
    private static final double INPUT_SHARE = 0.02;
    private static final double KELVIN = 3;
    private static final double FEW = 0.6;
    private static final int FEW_CYCLES = 40;

    private final SessionFile file;
    private final Optional<BenchSheet> bench;
    private final Optional<Design> design;
    private final ChannelEstimates estimates;
    private final List<Channel> channels;
    private HoldStretch held;
    private HoldStretch hold;
    private TimeSpan span;
    private int columns;
    private int perCycle;
    private OptionalLong cycle = OptionalLong.empty();

    public SoakReader(
            SessionFile file, Optional<BenchSheet> bench, Optional<Design> design, ChannelEstimates estimates) {
        this.file = file;
        this.bench = bench;
        this.design = design;
        this.estimates = estimates;
        this.channels = file.channels();
    }

    /**
     * The record of the longest hold with those of the others beside it; empty where the session has none, or less than a
     * dozen readings of each.
     */
    public Optional<SoakRecord> record(List<OperatingPoint> points) {
        Optional<Channel> volts = input(Quantity.VOLTAGE);
        if (volts.isEmpty()) {
            return Optional.empty();
        }
        List<SoakRecord> all = HoldStretch.all(file.steps(), file.events(), file.lastNanos()).stream()
                .flatMap(stretch -> record(stretch, points, volts.get()).stream())
                .toList();
        return all.stream().findFirst().map(longest -> longest.with(all.subList(1, all.size())));
    }

    private Optional<SoakRecord> record(HoldStretch stretch, List<OperatingPoint> points, Channel volts) {
        held = stretch;
        hold = stretch;
        perCycle = 1;
        cycle = cycleNanos();
        if (cycle.isPresent()) {
            hold = stretch.cycling(file.steps(), file.events());
        }
        span = new TimeSpan(
                hold.spans().get(0).fromNanos(),
                hold.spans().get(hold.spans().size() - 1).toNanos());
        long readings = Arrays.stream(file.envelope(volts, span, 1).readings()).sum();
        columns = (int) Math.min(COLUMNS, readings / READINGS_EACH);
        if (cycle.isPresent()) {
            wholeCycles(cycle.getAsLong());
        }
        return columns < LEAST_COLUMNS ? Optional.empty() : Optional.of(read(points, volts));
    }

    /**
     * Every column covers whole cycles, so that what goes to and fro does not show; of few cycles every column is the mean
     * of the cycle around it. They are counted back from the end, which a whole cycle brings.
     */
    private void wholeCycles(long cycleNanos) {
        long cycles = (span.toNanos() - span.fromNanos()) / cycleNanos;
        long each = Math.max(1, (cycles + columns - 1) / Math.max(1, columns));
        long whole = cycles / each;
        long covered = whole * each * cycleNanos;
        span = covered > 0 ? new TimeSpan(span.toNanos() - covered, span.toNanos()) : span;
        perCycle = whole < FEW_CYCLES && whole > 0 ? (int) Math.min(columns / whole, FEW_CYCLES) : 1;
        columns = (int) whole * perCycle;
    }

    private OptionalLong cycleNanos() {
        if (!hold.name().contains("cycled")) {
            return OptionalLong.empty();
        }
        return file
                .sheet("plan")
                .map(sheet -> Sheet.of(sheet.fileName(), sheet.text()).read(PlanReader::plan))
                .flatMap(plan -> Optional.ofNullable(plan.holds().get(hold.name())))
                .filter(one -> !one.cycle().isEmpty())
                .stream()
                .mapToLong(one -> one.cycle().stream()
                        .mapToLong(part -> part.length().toNanos())
                        .sum())
                .findFirst();
    }

    private SoakRecord read(List<OperatingPoint> points, Channel volts) {
        Map<Channel, Envelope> drawn = new LinkedHashMap<>();
        channels.stream()
                .filter(channel -> channel.quantity() != Quantity.RESISTANCE)
                .forEach(channel -> drawn.put(channel, file.envelope(channel, span, columns)));
        Envelope clock = drawn.get(volts);
        Map<String, SoakSeries> temperatures = new TreeMap<>();
        Optional<SoakSeries> room = Optional.empty();
        for (Channel channel : channels) {
            if (channel.quantity() == Quantity.TEMPERATURE) {
                if (ROOM.contains(channel.node())) {
                    room = Optional.of(series(channel, drawn.get(channel)));
                } else {
                    temperatures.put(channel.node(), series(channel, drawn.get(channel)));
                }
            }
        }
        List<OperatingPoint> averaged = points.stream()
                .filter(point -> point.stage().equals("hold")
                        && HoldStretch.name(point.step()).equals(hold.name()))
                .toList();
        return new SoakRecord(
                hold.name(),
                span.fromNanos() / 1e9,
                span.toNanos() / 1e9,
                middles(clock),
                temperatures,
                room,
                bench.map(sheet -> OptionalDouble.of(sheet.ambientDegC())).orElse(OptionalDouble.empty()),
                rails(drawn, Quantity.VOLTAGE),
                rails(drawn, Quantity.RIPPLE),
                Optional.of(series(volts, clock)),
                cycle.isPresent()
                        ? Optional.empty()
                        : input(Quantity.CURRENT).map(amps -> product(clock, drawn.get(amps))),
                cycle.isPresent() ? Optional.empty() : outputWatts(drawn),
                averaged.isEmpty() || cycle.isPresent()
                        ? Optional.empty()
                        : Optional.of(averaged.get(averaged.size() - 1).loss()),
                Math.max(1, railNames().size()),
                hold.breaks(),
                cycle.isPresent() ? OptionalDouble.of(cycle.getAsLong() / 1e9) : OptionalDouble.empty(),
                cycle.isPresent() ? 0 : excursions(drawn, temperatures.keySet()),
                gaps(clock),
                rests(),
                List.of());
    }

    /** How often the output went off within it and came on again. */
    private int rests() {
        return (int) file.events().stream()
                .filter(event -> event.event().kind() == EventKind.RESTED && held.holds(event.nanos() / 1e9))
                .count();
    }

    private Optional<Channel> input(Quantity quantity) {
        return List.of(new Channel("input", quantity), new Channel("supply", quantity)).stream()
                .filter(channels::contains)
                .findFirst();
    }

    private List<String> railNames() {
        return design.map(
                        sheet -> sheet.rails().stream().map(rail -> rail.name()).toList())
                .orElseGet(() -> channels.stream()
                        .filter(channel -> channel.quantity() == Quantity.VOLTAGE)
                        .map(Channel::node)
                        .filter(node -> !node.equals("input") && !node.equals("supply") && !node.endsWith("-load"))
                        .toList());
    }

    private SoakSeries series(Channel channel, Envelope envelope) {
        return new SoakSeries(means(envelope), value -> estimates.offBy(channel, value));
    }

    private Map<String, SoakSeries> rails(Map<Channel, Envelope> drawn, Quantity quantity) {
        Map<String, SoakSeries> rails = new LinkedHashMap<>();
        for (String rail : railNames()) {
            Channel channel = new Channel(rail, quantity);
            if (drawn.containsKey(channel)) {
                rails.put(rail, series(channel, drawn.get(channel)));
            }
        }
        return rails;
    }

    /** Means of the columns that lie within the hold; NaN elsewhere and where nothing was read. */
    private double[] means(Envelope envelope) {
        double[] middles = middles(envelope);
        double[] means = envelope.mean().clone();
        for (int i = 0; i < means.length; i++) {
            if (envelope.measured()[i] == 0 || !inside(envelope, i, middles[i])) {
                means[i] = Double.NaN;
            }
        }
        return perCycle > 1 ? overCycle(means) : means;
    }

    /** Means of as many columns as a cycle has; NaN where one of them is missing. */
    private double[] overCycle(double[] means) {
        double[] over = new double[means.length];
        for (int i = 0; i < over.length; i++) {
            int from = i - perCycle / 2;
            double sum = from < 0 || from + perCycle > means.length ? Double.NaN : 0;
            for (int j = Math.max(0, from); j < Math.min(means.length, from + perCycle); j++) {
                sum += means[j];
            }
            over[i] = sum / perCycle;
        }
        return over;
    }

    private boolean inside(Envelope envelope, int column, double middle) {
        return hold.spans().size() == 1
                || hold.holds(middle)
                        && hold.holds(envelope.edgeNanos()[column] / 1e9)
                        && hold.holds(envelope.edgeNanos()[column + 1] / 1e9 - 1e-3);
    }

    private static double[] middles(Envelope envelope) {
        double[] middles = new double[envelope.columns()];
        for (int i = 0; i < middles.length; i++) {
            middles[i] = (envelope.edgeNanos()[i] + envelope.edgeNanos()[i + 1]) / 2e9;
        }
        return middles;
    }

    private double[] product(Envelope a, Envelope b) {
        double[] first = means(a);
        double[] second = means(b);
        for (int i = 0; i < first.length; i++) {
            first[i] = Math.abs(first[i] * second[i]);
        }
        return first;
    }

    private Optional<double[]> outputWatts(Map<Channel, Envelope> drawn) {
        double[] sum = new double[columns];
        for (String rail : railNames()) {
            Envelope volts = drawn.get(new Channel(rail, Quantity.VOLTAGE));
            Envelope amps = drawn.get(new Channel(rail, Quantity.CURRENT));
            if (volts == null || amps == null || volts.columns() != sum.length) {
                return Optional.empty();
            }
            double[] watts = product(volts, amps);
            for (int i = 0; i < sum.length; i++) {
                sum[i] += watts[i];
            }
        }
        return railNames().isEmpty() ? Optional.empty() : Optional.of(sum);
    }

    private int excursions(Map<Channel, Envelope> drawn, Set<String> places) {
        int count = 0;
        for (Map.Entry<Channel, Envelope> entry : drawn.entrySet()) {
            Channel channel = entry.getKey();
            boolean rail = railNames().contains(channel.node());
            boolean temperature = channel.quantity() == Quantity.TEMPERATURE && places.contains(channel.node());
            boolean input = input(Quantity.VOLTAGE).equals(Optional.of(channel));
            if (temperature || input || rail && channel.quantity() == Quantity.VOLTAGE) {
                count += excursions(entry.getValue(), temperature, input);
            }
        }
        return count;
    }

    private int excursions(Envelope envelope, boolean temperature, boolean input) {
        double[] means = means(envelope);
        double typical = Arrays.stream(means)
                .filter(Double::isFinite)
                .map(Math::abs)
                .average()
                .orElse(0);
        double allowance = temperature ? KELVIN : Math.max(1e-6, typical * (input ? INPUT_SHARE : RAIL_SHARE));
        int skip = Math.max(1, means.length / 50);
        for (int i = 0; i < skip; i++) {
            means[i] = Double.NaN;
        }
        return Excursions.count(envelope.lowest(), means, envelope.highest(), allowance);
    }

    /** Stretches of columns that hold clearly fewer readings than usual, and breaks too short to empty a column. */
    private int gaps(Envelope clock) {
        long[] sorted = clock.readings().clone();
        Arrays.sort(sorted);
        long usual = sorted[sorted.length / 2];
        List<double[]> found = new ArrayList<>();
        for (int i = 1; i + 1 < clock.columns(); i++) {
            if (clock.readings()[i] == 0 || clock.readings()[i] < FEW * usual && usual >= 10) {
                double from = clock.edgeNanos()[i] / 1e9;
                double to = clock.edgeNanos()[i + 1] / 1e9;
                if (!found.isEmpty() && found.get(found.size() - 1)[1] >= from - 1e-6) {
                    found.get(found.size() - 1)[1] = to;
                } else {
                    found.add(new double[] {from, to});
                }
            }
        }
        double column = (clock.edgeNanos()[1] - clock.edgeNanos()[0]) / 1e9;
        int hidden = 0;
        for (int i = 1; i < hold.spans().size(); i++) {
            double ended = hold.spans().get(i - 1).toNanos() / 1e9;
            double again = hold.spans().get(i).fromNanos() / 1e9;
            boolean seen = found.stream().anyMatch(gap -> gap[1] > ended - 2 * column && gap[0] < again + column);
            hidden += seen ? 0 : 1;
        }
        return found.size() + hidden;
    }
}
