package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.safety.interlock.Limits;
import railwitness.safety.interlock.Phase;
import railwitness.safety.interlock.Subject;
import railwitness.safety.interlock.Watch;

/** What is watched while the output is on: the design sheet's limits on the channels this bench reads. */
final class Watches {
    private static final Channel SUPPLY_VOLTAGE = new Channel("supply", Quantity.VOLTAGE);
    private static final Channel SUPPLY_CURRENT = new Channel("supply", Quantity.CURRENT);
    private static final Channel INPUT_VOLTAGE = new Channel("input", Quantity.VOLTAGE);
    private static final Duration SUPPLY_AGE = Duration.ofSeconds(1);
    private static final Duration METER_AGE = Duration.ofSeconds(3);
    /** A channel may miss this many rounds before it counts as silent. */
    private static final int ROUNDS = 3;
    /** Until a line is back in step after one lost reply, and the reading after it has come. */
    private static final Duration IN_STEP = Duration.ofMillis(600);

    private final Design design;
    private final Set<Channel> read;
    private final Pace pace;
    private final RunLimits limits;
    private final List<Watch> watches = new ArrayList<>();

    /**
     * How often and how quickly instruments answer.
     *
     * @param interval of polling
     * @param answers longest wait for the answer of whoever reads a channel
     * @param bySight channels that a person reads: judged whenever they are read
     * @param standbySlack by what a meter for full-load current may be off at the small drain of standby, A
     * @param movedByHand a person moves set points, which takes its time: what is worked out from several readings is not
     *     judged meanwhile, and its silence is none; each of those readings is watched by itself
     */
    record Pace(
            Duration interval,
            Function<Channel, Duration> answers,
            Set<Channel> bySight,
            double standbySlack,
            boolean movedByHand) {
        /** All is read by instruments. */
        Pace(Duration interval, Function<Channel, Duration> answers) {
            this(interval, answers, Set.of(), 0, false);
        }
    }

    private Watches(Design design, Set<Channel> read, Pace pace, RunLimits limits) {
        this.design = design;
        this.read = read;
        this.pace = pace;
        this.limits = limits;
    }

    /**
     * @param read channels that instruments read by themselves, the read-back of a supply with a serial line among them
     */
    static List<Watch> of(Design design, Set<Channel> read, Pace pace, RunLimits limits) {
        Watches made = new Watches(design, read, pace, limits);
        made.supply();
        made.inputCurrent();
        design.rails().forEach(made::rail);
        made.imbalance();
        made.heatsink();
        made.extraLoss();
        return List.copyOf(made.watches);
    }

    private void supply() {
        if (read.contains(SUPPLY_VOLTAGE)) {
            supplyVolts();
        }
        if (read.contains(SUPPLY_CURRENT)) {
            supplyAmps();
        }
        if (pace.bySight().contains(INPUT_VOLTAGE)) {
            watches.add(
                    Watch.of("input voltage", INPUT_VOLTAGE, Watch.BY_SIGHT, Limits.atMost(limits.overVoltageVolts())));
        }
    }

    private void supplyVolts() {
        watches.add(Watch.of(
                "supply voltage",
                SUPPLY_VOLTAGE,
                age(SUPPLY_AGE, SUPPLY_VOLTAGE),
                Limits.atMost(limits.overVoltageVolts())));
    }

    private void supplyAmps() {
        watches.add(Watch.of(
                "supply current",
                new Subject.Magnitude(SUPPLY_CURRENT),
                age(SUPPLY_AGE, SUPPLY_CURRENT),
                Limits.atMost(limits.overCurrentAmps())));
    }

    private void inputCurrent() {
        Channel channel = new Channel("input", Quantity.CURRENT);
        if (!read.contains(channel)) {
            return;
        }
        Watch watch = Watch.of(
                "input current",
                new Subject.Magnitude(channel),
                age(METER_AGE, channel),
                Limits.atMost(limits.inputAmps()));
        OptionalDouble standby = design.limits().standbyAmperes();
        watches.add(
                standby.isPresent()
                        ? watch.during(Phase.STANDBY, Limits.atMost(standby.getAsDouble() + pace.standbySlack()))
                        : watch);
    }

    private void rail(Rail rail) {
        Channel channel = new Channel(rail.name(), Quantity.VOLTAGE);
        if (!read.contains(channel)) {
            return;
        }
        double high = limits.railHighVolts(rail.name());
        Watch watch = Watch.of(
                rail.name() + " rail", new Subject.Magnitude(channel), age(METER_AGE, channel), Limits.atMost(high));
        double low = limits.railLowVolts(rail.name()).orElse(0);
        watches.add(watch.during(Phase.UP, Limits.between(Math.min(low, high), high)));
    }

    private void imbalance() {
        OptionalDouble limit = design.limits().imbalanceVolts();
        if (limit.isEmpty() || design.rails().size() != 2) {
            return;
        }
        Channel one = new Channel(design.rails().get(0).name(), Quantity.VOLTAGE);
        Channel other = new Channel(design.rails().get(1).name(), Quantity.VOLTAGE);
        if (read.containsAll(Set.of(one, other))) {
            watches.add(
                    Watch.of("imbalance", new Subject.Imbalance(one, other), age(METER_AGE, one, other), Limits.open())
                            .during(Phase.UP, Limits.atMost(limit.getAsDouble())));
        }
    }

    private void heatsink() {
        Channel channel = new Channel("heatsink", Quantity.TEMPERATURE);
        OptionalDouble limit = design.limits().heatsinkDegC();
        if (limit.isPresent() && read.contains(channel)) {
            watches.add(Watch.of("heat sink", channel, age(METER_AGE, channel), Limits.atMost(limit.getAsDouble())));
        }
    }

    /** The design's loss at no load, half load and full load gives the curve; what goes beyond it is heat in a fault. */
    private void extraLoss() {
        OptionalDouble limit = design.limits().extraLossWatts();
        if (limit.isEmpty() || !read.containsAll(extraLossChannels())) {
            return;
        }
        double full = design.rails().stream()
                .mapToDouble(rail -> rail.fullLoadAmperes().orElse(0))
                .sum();
        OptionalDouble none = lossAt(0);
        OptionalDouble halfLoad = lossAt(0.5);
        OptionalDouble fullLoad = lossAt(1);
        if (none.isEmpty() || halfLoad.isEmpty() || fullLoad.isEmpty() || full == 0) {
            return;
        }
        double half = halfLoad.getAsDouble() - none.getAsDouble();
        double whole = fullLoad.getAsDouble() - none.getAsDouble();
        double ohms = (2 * whole - 4 * half) / (full * full);
        double wattsPerAmp = (4 * half - whole) / full;
        Duration age = age(METER_AGE, extraLossChannels().toArray(Channel[]::new));
        watches.add(Watch.of(
                        "loss beyond the predicted",
                        new Subject.ExtraLoss(
                                new Channel("input", Quantity.VOLTAGE),
                                new Channel("input", Quantity.CURRENT),
                                railPairs(),
                                none.getAsDouble(),
                                wattsPerAmp,
                                ohms),
                        age.equals(Watch.BY_SIGHT) ? age : age.multipliedBy(2),
                        Limits.open())
                .during(Phase.UP, Limits.atMost(limit.getAsDouble())));
    }

    private Set<Channel> extraLossChannels() {
        Set<Channel> all = new java.util.TreeSet<>(
                Set.of(new Channel("input", Quantity.VOLTAGE), new Channel("input", Quantity.CURRENT)));
        railPairs().forEach(pair -> all.addAll(Set.of(pair.volts(), pair.amps())));
        return all;
    }

    private List<Subject.RailPair> railPairs() {
        return design.rails().stream()
                .map(rail -> new Subject.RailPair(
                        new Channel(rail.name(), Quantity.VOLTAGE), new Channel(rail.name(), Quantity.CURRENT)))
                .toList();
    }

    private OptionalDouble lossAt(double share) {
        Map<String, Double> amps = new java.util.HashMap<>();
        design.rails()
                .forEach(rail ->
                        amps.put(rail.name(), share * rail.fullLoadAmperes().orElse(0)));
        return Prediction.of(design, design.input().nominalVolts(), amps)
                .map(Prediction::loss)
                .orElse(OptionalDouble.empty());
    }

    /**
     * One reply may be lost: its wait, the line back in step and the next reading of the round after must fit in. What
     * stays silent for longer than that trips, and so does what is lost twice in a row.
     */
    private Duration age(Duration usual, Channel... channels) {
        boolean derived = channels.length > 1;
        if (derived && pace.movedByHand() || Arrays.stream(channels).anyMatch(pace.bySight()::contains)) {
            return Watch.BY_SIGHT;
        }
        Duration rounds = pace.interval().multipliedBy(ROUNDS);
        Duration slowest = Arrays.stream(channels)
                .map(pace.answers())
                .max(Comparator.naturalOrder())
                .orElse(Duration.ZERO);
        Duration lost = pace.interval().plus(slowest).plus(IN_STEP);
        return Stream.of(usual, rounds, lost).max(Comparator.naturalOrder()).orElseThrow();
    }
}
