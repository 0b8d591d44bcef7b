package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.analysis.steady.SettlingRule;
import railwitness.analysis.transformer.WoundAsMeant;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.Meter;
import railwitness.drivers.instrument.Scope;
import railwitness.drivers.instrument.SupplySetting;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.plan.Rating;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.points.WindingChannels;
import railwitness.safety.interlock.Watch;
import railwitness.safety.power.Chain;
import railwitness.safety.power.FirstPowerBounds;
import railwitness.safety.power.FirstPowerReadings;
import railwitness.safety.power.Rails;
import railwitness.safety.power.Result;
import railwitness.safety.power.Settings;

/** One unit on one bench with one plan: everything a run asks of the three sheets. */
public final class RunSetup {
    private static final Channel INPUT_CURRENT = new Channel("input", Quantity.CURRENT);
    private static final Channel SUPPLY_CURRENT = new Channel("supply", Quantity.CURRENT);
    private static final Channel SUPPLY_VOLTAGE = new Channel("supply", Quantity.VOLTAGE);
    private static final Channel INPUT_VOLTAGE = new Channel("input", Quantity.VOLTAGE);

    /** The slope is looked at over this long. */
    private static final double SETTLE_WINDOW_SECONDS = 3;

    private static final double DOWN_SHARE = 0.5;
    private static final double LEAST_STEP_VOLTS = 0.001;

    /** So many questions an instrument is asked in a round, at most. */
    private static final int QUESTIONS = 6;

    /** From this share of full load on a step counts as one at full load. */
    private static final double FULL = 0.975;

    private final UnaryOperator<List<Step>> left;
    private final Scheduler scheduler;
    private final Bench bench;
    private final Design design;
    private final Plan plan;
    private final Rating rating;
    private final RunLimits limits;
    private final Set<Channel> read;
    private final Optional<WoundAsMeant> wound;

    public RunSetup(Scheduler scheduler, Bench bench, Design design, Plan plan) {
        this(scheduler, bench, design, plan, Optional.empty(), UnaryOperator.identity());
    }

    /**
     * @param wound what the design leads to expect of a transformer that is measured by itself
     * @param left what of the plan's steps is to be done: all, or the rest after an interruption
     */
    public RunSetup(
            Scheduler scheduler,
            Bench bench,
            Design design,
            Plan plan,
            Optional<WoundAsMeant> wound,
            UnaryOperator<List<Step>> left) {
        this.wound = wound;
        this.left = left;
        this.scheduler = scheduler;
        this.bench = bench;
        this.design = design;
        this.plan = plan;
        this.rating = ratingOf(design);
        this.limits = RunLimits.of(design, plan, bench.supply().instrument().highestAmps());
        this.read = new TreeSet<>(bench.sheet().readBy().keySet());
        bench.sheet().handRead().forEach(meter -> read.remove(meter.reads()));
        if (isByHand()) {
            read.remove(SUPPLY_CURRENT);
            read.remove(SUPPLY_VOLTAGE);
        } else {
            read.add(SUPPLY_CURRENT);
            read.add(SUPPLY_VOLTAGE);
        }
    }

    /** Whether the supply has only knobs. */
    boolean isByHand() {
        return bench.sheet().isSetByHand();
    }

    /** What a person reads at a bench whose supply has only knobs: it is judged by the same limits. */
    private Set<Channel> bySight() {
        Set<Channel> seen = new TreeSet<>();
        if (isByHand()) {
            handRead().forEach(meter -> seen.add(meter.reads()));
        }
        return seen;
    }

    /** When a step of any plan counts as settled. */
    public static SettlingRule settlingRule() {
        return SettlingRule.overLast(SETTLE_WINDOW_SECONDS);
    }

    /** A rail without a stated full load is never loaded. */
    public static Rating ratingOf(Design design) {
        Map<String, Double> full = new java.util.LinkedHashMap<>();
        design.rails()
                .forEach(rail -> full.put(rail.name(), rail.fullLoadAmperes().orElse(0)));
        return new Rating(design.input().nominalVolts(), full);
    }

    Scheduler scheduler() {
        return scheduler;
    }

    Bench bench() {
        return bench;
    }

    Design design() {
        return design;
    }

    RunLimits limits() {
        return limits;
    }

    Duration interval() {
        return bench.sheet().interval();
    }

    /** Longest pause of the program while power is on. */
    Duration patience() {
        return bench.sheet().patience();
    }

    /** Longest wait for what a person is asked while the output is on. */
    Duration answerAtMost() {
        return plan.answerAtMost();
    }

    List<Step> steps() {
        return left.apply(plan.steps(rating));
    }

    /** Whether a meter reads the unit's own terminals. */
    boolean readsTerminals() {
        return read.contains(INPUT_VOLTAGE);
    }

    /** Smallest step of the supply's voltage, V. */
    double supplyStepVolts() {
        return bench.supply().instrument().resolutionVolts().orElse(LEAST_STEP_VOLTS);
    }

    double nominalVolts() {
        return design.input().nominalVolts();
    }

    List<Watch> watches() {
        Set<Channel> all = new TreeSet<>(read);
        all.addAll(bySight());
        return Watches.of(
                design,
                all,
                new Watches.Pace(interval(), this::answerWithin, bySight(), slackAmps(), movedByHand()),
                limits);
    }

    /** Whether a limit is watched, or a step averaged, by what this instrument reads. */
    boolean reliesOn(String instrument) {
        Set<Channel> witnessed = new TreeSet<>();
        watches().forEach(watch -> witnessed.addAll(watch.subject().channels()));
        steps().forEach(step -> witnessed.addAll(needed(step)));
        return bench.sheet().readBy().entrySet().stream()
                .anyMatch(read -> read.getValue().equals(instrument) && witnessed.contains(read.getKey()));
    }

    private boolean movedByHand() {
        return isByHand() || !bench.sheet().banks().isEmpty();
    }

    /** By what the meter of the input current may be off at next to nothing, where a person reads it. */
    private double slackAmps() {
        return isByHand() ? InputLeads.of(bench.sheet(), inputCurrent(), limits).negativeAmps() : 0;
    }

    /** Longest wait for an answer of whoever reads this channel, and for the rest of its round. */
    private Duration answerWithin(Channel channel) {
        return bench.sheet().instruments().stream()
                .filter(sheet -> channel.node().equals("supply")
                        ? sheet.name().equals(bench.supply().name())
                        : sheet.reads().contains(channel))
                .map(sheet -> sheet.answerWithin().plus(round(sheet.name())))
                .max(Comparator.naturalOrder())
                .orElse(Duration.ZERO);
    }

    /** What the questions of one round take at least, where each needs its time. */
    private Duration round(String instrument) {
        return bench.workers().stream()
                .filter(worker -> worker.name().equals(instrument))
                .map(worker -> worker.instrument().quickestAnswer().multipliedBy(QUESTIONS))
                .findFirst()
                .orElse(Duration.ZERO);
    }

    /** Magnitude below which a rail that was up counts as down, V: its own limit, else half of its nominal. */
    double railDownVolts(String rail) {
        double nominal = Math.abs(design.rail(rail).orElseThrow().nominalVolts());
        return limits.railLowVolts(rail).orElse(DOWN_SHARE * nominal);
    }

    List<InstrumentWorker<Load>> loads() {
        return List.copyOf(bench.loads().values());
    }

    Optional<WoundAsMeant> wound() {
        return wound;
    }

    Plan plan() {
        return plan;
    }

    /** With what the supply is armed for direct current through a winding: little voltage, a current limit that works. */
    Settings windingArming(double amps) {
        return FirstPowerSettings.winding(bench, amps);
    }

    Set<String> programmableRails() {
        return bench.loads().keySet();
    }

    /** The resistor of the rail's bank that comes nearest to this current; empty for none, or without a bank. */
    OptionalDouble resistor(String rail, double amps) {
        return amps == 0
                ? OptionalDouble.empty()
                : bench.sheet()
                        .bank(rail)
                        .map(bank -> OptionalDouble.of(bank.nearest(nominalRailVolts(rail) / amps)))
                        .orElse(OptionalDouble.empty());
    }

    private double nominalRailVolts(String rail) {
        return Math.abs(design.rail(rail).orElseThrow().nominalVolts());
    }

    /** A step of the plan in which the unit runs without load, where there is one. */
    Optional<Step> unloaded() {
        return steps().stream()
                .filter(step -> step.remoteOn()
                        && step.inputVolts() == nominalVolts()
                        && step.loadAmps().values().stream().allMatch(amps -> amps == 0))
                .findFirst();
    }

    List<HandRead> handRead() {
        List<HandRead> meters = new ArrayList<>(display());
        bench.sheet().handRead().stream()
                .filter(meter -> !WindingChannels.isWinding(meter.reads()))
                .forEach(meters::add);
        return List.copyOf(meters);
    }

    /** What is read off the display of a supply that has only knobs, as far as no better meter reads it. */
    private List<HandRead> display() {
        Set<Channel> others = bench.sheet().readBy().keySet();
        List<HandRead> meters = new ArrayList<>();
        bench.sheet().instruments().stream().filter(InstrumentSheet::isByHand).forEach(sheet -> {
            SupplySetting setting = ((Duty.AsSupply) sheet.duty()).setting();
            if (!others.contains(INPUT_VOLTAGE)) {
                meters.add(new HandRead(
                        sheet.name(),
                        SUPPLY_VOLTAGE,
                        setting.highestVolts(),
                        Optional.ofNullable(sheet.accuracy().get(Quantity.VOLTAGE))));
            }
            if (!others.contains(INPUT_CURRENT)) {
                meters.add(new HandRead(
                        sheet.name(),
                        SUPPLY_CURRENT,
                        setting.highestAmps(),
                        Optional.ofNullable(sheet.accuracy().get(Quantity.CURRENT))));
            }
        });
        return meters;
    }

    boolean drivesRemote() {
        return bench.supply().instrument().drivesRemote();
    }

    Channel inputCurrent() {
        boolean seen = isByHand() && bench.sheet().readBy().containsKey(INPUT_CURRENT);
        return seen || read.contains(INPUT_CURRENT) ? INPUT_CURRENT : SUPPLY_CURRENT;
    }

    /** The first thing a person will be asked while the output is on, in words; empty where nobody is needed. */
    Optional<String> asksUnderPower() {
        if (!drivesRemote()) {
            return Optional.of("to switch the remote turn-on");
        }
        if (!firstPower().noLoadKnown()) {
            return Optional.of("whether the current without load is right, as the design sheet does not give it");
        }
        Optional<String> switched = steps().stream()
                .flatMap(step -> step.loadAmps().entrySet().stream())
                .filter(load -> load.getValue() > 0)
                .map(Map.Entry::getKey)
                .filter(rail -> bench.sheet().bank(rail).isPresent()
                        && !programmableRails().contains(rail))
                .findFirst()
                .map(rail -> "to switch the load of the " + rail + " rail");
        return switched.or(() -> handRead().stream()
                .findFirst()
                .map(meter -> "to read the " + meter.reads().node() + " meter"));
    }

    /** Voltage channels of the rails that instruments read by themselves. */
    List<Channel> watchedRails() {
        return design.rails().stream()
                .map(rail -> new Channel(rail.name(), Quantity.VOLTAGE))
                .filter(read::contains)
                .toList();
    }

    Rails rails() {
        List<Channel> input = new ArrayList<>(List.of(new Channel("supply", Quantity.VOLTAGE)));
        Channel terminals = new Channel("input", Quantity.VOLTAGE);
        if (read.contains(terminals)) {
            input.add(terminals);
        }
        return new Rails(seenRails(), input, FirstPowerSettings.touchVolts(design));
    }

    /** Voltage channels of the rails on which power is judged: at a supply with knobs also those that a person reads. */
    List<Channel> seenRails() {
        return isByHand()
                ? design.rails().stream()
                        .map(rail -> new Channel(rail.name(), Quantity.VOLTAGE))
                        .toList()
                : watchedRails();
    }

    Settings arming() {
        return FirstPowerSettings.arming(bench, limits, plan, design);
    }

    /** What settings are held against. */
    SettingsHeld.SettingsHeldSheet held() {
        InputLeads leads = InputLeads.of(bench.sheet(), inputCurrent(), limits);
        Map<String, Double> nominals = new TreeMap<>();
        Map<String, Double> down = new TreeMap<>();
        design.rails().forEach(rail -> {
            nominals.put(rail.name(), rail.nominalVolts());
            down.put(rail.name(), railDownVolts(rail.name()));
        });
        return new SettingsHeld.SettingsHeldSheet(
                bench.supply().name(), limits.workingAmps(), leads.words(), leads.negativeAmps(), down, nominals);
    }

    /** What must move from step to step. */
    FrozenReadings frozen() {
        return new FrozenReadings(
                rating.fullLoadAmps(),
                design.rails().stream()
                        .filter(design::regulates)
                        .map(Rail::name)
                        .collect(Collectors.toSet()));
    }

    /** What first power listens to, and what it should find. */
    FirstPowerReadings firstPowerReadings() {
        InputLeads leads = InputLeads.of(bench.sheet(), inputCurrent(), limits);
        return new FirstPowerReadings(
                inputCurrent(),
                leads.words(),
                leads.negativeAmps(),
                Optional.of(INPUT_VOLTAGE).filter(read::contains),
                SUPPLY_VOLTAGE,
                SUPPLY_CURRENT,
                FirstPowerSettings.targets(design, seenRails()),
                looksByHand());
    }

    /** Whether first power waits for what a person reads. */
    boolean looksByHand() {
        return isByHand() && !(read.contains(inputCurrent()) && read.containsAll(seenRails()));
    }

    FirstPowerBounds firstPower() {
        return FirstPowerSettings.bounds(design, plan, limits, drivesRemote(), slackAmps());
    }

    /** The scopes that look at the unit in this step: at full load and nominal input, else none. */
    List<InstrumentWorker<Scope>> scopes(Step step) {
        boolean full = rating.fullLoadAmps().entrySet().stream()
                .allMatch(rail -> step.loadAmps().getOrDefault(rail.getKey(), 0.0) >= FULL * rail.getValue());
        boolean loaded = step.loadAmps().values().stream().anyMatch(amps -> amps > 0);
        boolean nominal = Math.abs(step.inputVolts() - nominalVolts()) < 1e-6 * nominalVolts();
        return step.remoteOn() && loaded && full && nominal ? bench.scopes() : List.of();
    }

    /** What must stop drifting before a step is averaged: the rails and the input current. */
    Set<Channel> judged(Step step) {
        Set<Channel> judged = new TreeSet<>();
        judged.add(inputCurrent());
        if (step.remoteOn()) {
            judged.addAll(watchedRails());
        }
        judged.retainAll(read);
        return judged;
    }

    /** Of what an average needs a reading: what is judged, both ends of the input leads, the loads. */
    Set<Channel> needed(Step step) {
        Set<Channel> needed = judged(step);
        if (!isByHand()) {
            needed.add(SUPPLY_VOLTAGE);
        }
        if (read.contains(INPUT_VOLTAGE)) {
            needed.add(INPUT_VOLTAGE);
        }
        programmableRails().stream()
                .map(rail -> new Channel(rail, Quantity.CURRENT))
                .filter(read::contains)
                .forEach(needed::add);
        return needed;
    }

    /** Why a step cannot be taken on this bench, before it is tried. */
    Optional<String> beyondReach(Step step) {
        var supply = bench.supply().instrument();
        if (step.inputVolts() > supply.highestVolts().orElse(Double.POSITIVE_INFINITY)) {
            return Optional.of(words(
                    "needs %.3g V, the supply gives %.3g V",
                    step.inputVolts(), supply.highestVolts().orElse(0)));
        }
        for (var load : step.loadAmps().entrySet()) {
            Optional<String> beyond =
                    withoutLoad(load.getKey(), load.getValue()).or(() -> beyondLoad(load.getKey(), load.getValue()));
            if (beyond.isPresent()) {
                return beyond;
            }
        }
        return step.remoteOn() && step.inputVolts() > 0
                ? Prediction.of(design, step.inputVolts(), step.loadAmps())
                        .filter(predicted -> predicted.inputAmperes() > limits.workingAmps())
                        .map(predicted -> words(
                                "needs about %.3g A at the input, the limit is %.3g A",
                                predicted.inputAmperes(), limits.workingAmps()))
                : Optional.empty();
    }

    private Optional<String> withoutLoad(String rail, double amps) {
        boolean loaded =
                programmableRails().contains(rail) || bench.sheet().bank(rail).isPresent();
        return amps == 0 || loaded
                ? Optional.empty()
                : Optional.of("nothing loads the " + rail + " rail: add a load or a resistor bank to the bench sheet");
    }

    private Optional<String> beyondLoad(String rail, double amps) {
        return bench.sheet().instruments().stream()
                .filter(instrument -> instrument.duty() instanceof railwitness.drivers.bench.Duty.AsLoad)
                .map(instrument -> ((railwitness.drivers.bench.Duty.AsLoad) instrument.duty()).setting())
                .filter(setting -> setting.rail().equals(rail)
                        && amps > setting.highestAmps().orElse(Double.POSITIVE_INFINITY))
                .map(setting -> words(
                        "needs %.3g A on " + rail + ", the load takes %.3g A",
                        amps,
                        setting.highestAmps().orElse(0)))
                .findFirst();
    }

    /** Every meter that reads the input current chooses its range for standby, or for the highest input current. */
    void standbyRange(boolean small, Consumer<Result> then) {
        double highest = small ? design.limits().standbyAmperes().orElse(limits.inputAmps() / 100) : limits.inputAmps();
        Chain ranges = Chain.begin();
        bench.meters().stream()
                .filter(worker -> bench.sheet()
                        .instrument(worker.name())
                        .filter(sheet -> sheet.reads().contains(INPUT_CURRENT))
                        .isPresent())
                .forEach(worker -> ranges.then(done -> range(worker, highest, done)));
        ranges.run(then);
    }

    private static void range(InstrumentWorker<Meter> worker, double highest, Consumer<Result> then) {
        worker.ask(
                () -> {
                    worker.instrument().rangeFor(highest);
                    return new Result.Done("range chosen");
                },
                outcome -> outcome.either(then::accept, why -> then.accept(withoutRange(why))));
    }

    /** A meter that is away is told its function and range when it comes back; its loss is another matter. */
    private static Result withoutRange(LineException why) {
        return why.trouble() == LineException.Trouble.UNPLUGGED
                ? new Result.Done("its port has gone")
                : new Result.Refused(why.getMessage());
    }

    private static String words(String form, double one, double other) {
        return String.format(java.util.Locale.ROOT, form, one, other);
    }
}
