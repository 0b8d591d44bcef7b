package railwitness.logger.reporting.findings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeMap;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.drivers.converter.Balance;
import railwitness.drivers.converter.Draw;
import railwitness.drivers.converter.Feed;
import railwitness.drivers.converter.Room;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.Surroundings;
import railwitness.drivers.converter.Wear;
import railwitness.drivers.converter.World;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.TimeSpan;

/**
 * A soak of days, 8 channels at 50 readings a second, of a unit of two bodies in a wandering room whose truth is known:
 * what it costs to keep and to look at, and whether its findings are right. Arguments: hours of the longest.
 */
public final class BurnInTable {
    private static final double PER_SECOND = 50;
    private static final double AMPS = 3;
    private static final Instant START = Instant.parse("2026-05-11T08:00:00Z");
    private static final String ROOM_METER = """

            [[instrument]]
            name = "room meter"
            kind = "meter"
            port = "room-meter"
            dialect = "scpi-1999"
            reads = "room.temperature"
            accuracy.temperature = { offset = 0.5, stated_as = "limit" }
            """;

    private BurnInTable() {}

    /** One length. */
    record Row(double hours, long readings, double keptSeconds, double megabytes, double lookSeconds, String right) {}

    public static void main(String... arguments) throws IOException {
        double longest = arguments.length > 0 ? Double.parseDouble(arguments[0]) : 72;
        Path folder = Files.createTempDirectory("burn-in");
        for (double hours : new double[] {longest / 100, longest / 10, longest}) {
            Path file = folder.resolve("burn-in-" + hours + ".session");
            Row row = row(file, hours, PER_SECOND);
            System.out.printf(
                    Locale.ROOT,
                    "%6.2f h  %,12d readings  kept in %6.1f s  %8.2f MB  all findings in %5.2f s  %s%n",
                    row.hours(),
                    row.readings(),
                    row.keptSeconds(),
                    row.megabytes(),
                    row.lookSeconds(),
                    row.right());
            Files.deleteIfExists(file);
        }
        Files.deleteIfExists(folder);
    }

    static Row row(Path file, double hours, double perSecond) throws IOException {
        Specimen specimen = Specimen.usual();
        specimen = specimen.withThermal(specimen.thermal().joined(3));
        long begun = System.nanoTime();
        Truth truth = record(file, hours, perSecond, specimen);
        double kept = (System.nanoTime() - begun) / 1e9;
        long looked = System.nanoTime();
        SessionFindings found = SessionFindings.of(file);
        double look = (System.nanoTime() - looked) / 1e9;
        return new Row(hours, truth.readings, kept, Files.size(file) / 1e6, look, truth.against(found));
    }

    /** What the made-up unit truly does. */
    private static final class Truth {
        private long readings;
        private double riseKelvin;
        private double driftPerHour;

        String against(SessionFindings found) {
            return one(found, FigureName.FINAL_HEAT_SINK_RISE, Optional.empty(), riseKelvin) + "; "
                    + one(found, FigureName.DRIFT, Optional.of("plus"), driftPerHour);
        }

        private static String one(SessionFindings found, FigureName name, Optional<String> rail, double truth) {
            Optional<Figure> figure = found.findings().figure(name, rail);
            if (figure.isEmpty()) {
                return name.word() + " not found";
            }
            double u = figure.get().value().coverage(0.95).expanded();
            boolean inside = Math.abs(figure.get().value().value() - truth) <= u;
            return String.format(
                    Locale.ROOT,
                    "%s %.4g +- %.2g, truly %.4g, %s",
                    name.word(),
                    figure.get().value().value(),
                    u,
                    truth,
                    inside ? "inside" : "OUTSIDE");
        }
    }

    private static Truth record(Path file, double hours, double perSecond, Specimen specimen) throws IOException {
        Path sheets = Path.of("..", "sessions-sample", "burn-in");
        String bench = Files.readString(sheets.resolve("bench.toml"));
        SessionHead head = new SessionHead("0098", START, ZoneOffset.UTC, true, "test", "", "Horn supply", "0098", "");
        World world = world(specimen, Room.wandering(22, 3));
        SplittableRandom random = new SplittableRandom(17);
        Truth truth = new Truth();
        long total = Math.round(hours * 3600);
        truth.riseKelvin = restingRise(specimen);
        double[] late = new double[5];
        try (SessionWriter writer = SessionWriter.create(file, head)) {
            writer.sheet("design", "design.toml", Files.readString(sheets.resolve("design.toml")));
            writer.sheet("bench", "bench.toml", bench.contains("room.temperature") ? bench : bench + ROOM_METER);
            writer.sheet("plan", "plan.toml", Files.readString(sheets.resolve("plan.toml")));
            Map<Channel, Double> noise = new LinkedHashMap<>();
            for (long second = 0; second < total; second++) {
                Map<Channel, Double> values = look(world, second);
                if (second >= total / 2) {
                    regress(late, second / 3600.0, values.get(Channel.of("plus.voltage")));
                }
                for (int k = 0; k < perSecond; k++) {
                    long at = second * 1_000_000_000L + Math.round(k * 1e9 / perSecond);
                    for (Map.Entry<Channel, Double> one : values.entrySet()) {
                        double before = noise.getOrDefault(one.getKey(), 0.0);
                        double now = 0.9 * before + 0.4 * random.nextGaussian();
                        noise.put(one.getKey(), now);
                        double scatter = one.getKey().quantity().unit().equals("degC") ? 0.05 : 2e-4 * one.getValue();
                        writer.reading(new Measured(one.getKey(), one.getValue() + scatter * now, at, at + 1));
                        truth.readings++;
                    }
                }
            }
            long end = total * 1_000_000_000L;
            long average = Math.min(end / 20, 60_000_000_000L);
            writer.step(step("75 % begin", 0, new TimeSpan(average, 2 * average)));
            writer.step(step("75 % end", 2 * average, new TimeSpan(end - average, end)));
            writer.finish(SessionState.COMPLETE);
        }
        double n = late[0];
        double slope = (n * late[4] - late[1] * late[2]) / (n * late[3] - late[1] * late[1]);
        truth.driftPerHour = 100 * slope / (late[2] / n);
        return truth;
    }

    private static void regress(double[] sums, double x, double y) {
        sums[0]++;
        sums[1] += x;
        sums[2] += y;
        sums[3] += x * x;
        sums[4] += x * y;
    }

    private static StepEntry step(String name, long beginNanos, TimeSpan average) {
        return new StepEntry(
                "hold",
                name,
                beginNanos,
                Optional.of(average),
                true,
                StepOutcome.MEASURED,
                "",
                OptionalDouble.of(13.8),
                new TreeMap<>(Map.of("plus", AMPS, "minus", AMPS)));
    }

    private static World world(Specimen specimen, Room room) {
        World world = new World(specimen, new Surroundings(room, Wear.capacitor("plus", 0.01)));
        world.feed(0, Feed.of(13.8, 40));
        world.remote(0, true);
        world.draw(2_000_000_000L, "plus", "load", Draw.amps(AMPS));
        world.draw(2_000_000_000L, "minus", "load", Draw.amps(AMPS));
        return world;
    }

    /** Above the room once nothing changes any more, K. */
    private static double restingRise(Specimen specimen) {
        World still = world(specimen, Room.still(22));
        return still.degC(40_000_000_000_000L, "heatsink") - 22;
    }

    private static Map<Channel, Double> look(World world, long second) {
        long nanos = Math.max(3, second) * 1_000_000_000L;
        Balance balance = world.at(nanos);
        Map<Channel, Double> values = new LinkedHashMap<>();
        values.put(Channel.of("input.voltage"), balance.terminalVolts());
        values.put(Channel.of("input.current"), balance.inputAmps());
        values.put(Channel.of("plus.voltage"), balance.rails().get(0).volts());
        values.put(Channel.of("plus.current"), AMPS);
        values.put(Channel.of("minus.voltage"), balance.rails().get(1).volts());
        values.put(Channel.of("minus.current"), AMPS);
        values.put(Channel.of("heatsink.temperature"), world.degC(nanos, "heatsink"));
        values.put(Channel.of("room.temperature"), world.degC(nanos, "room"));
        return values;
    }
}
