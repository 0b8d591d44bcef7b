package railwitness.analysis.supply;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;

/**
 * The points of a test, sorted out by what was measured: loads against full load, not the names of steps. Points come in
 * the order of their time, whatever order they were handed over in.
 */
public final class Points {
    /** A step counts as, say, 25 % within this many hundredths of full load. */
    static final double STEP_WIDTH = 0.025;

    private static final double LEAST_LOAD = 0.025;
    private static final double HELD = 0.97;
    private static final Set<String> NOT_OF_THE_SWEEP =
            Set.of("standby", "power-up", "line-sweep", "cross-load", "hold");
    private static final Comparator<OperatingPoint> BY_TIME = Comparator.comparingDouble(OperatingPoint::fromSeconds)
            .thenComparingDouble(point -> point.input().current().value())
            .thenComparingDouble(point -> point.input().voltage().value());

    private final List<OperatingPoint> all;
    private final Optional<Design> design;
    private final List<String> rails;
    private final Map<String, Double> fullLoads = new HashMap<>();
    private final Map<String, Double> best = new HashMap<>();
    private final List<OperatingPoint> sweep;

    /** Sorts the points; the design gives full load and the rails' order where it is there. */
    public Points(List<OperatingPoint> all, Optional<Design> design) {
        this.all = all.stream().sorted(BY_TIME).toList();
        this.design = design;
        this.rails = design.map(sheet -> sheet.rails().stream().map(Rail::name).toList())
                .orElseGet(() -> this.all.stream()
                        .flatMap(point -> point.rails().keySet().stream())
                        .distinct()
                        .toList());
        OptionalDouble largest = largestEqualLoad();
        rails.forEach(rail -> statedFullLoad(rail, largest).ifPresent(amperes -> fullLoads.put(rail, amperes)));
        rails.forEach(rail -> best.put(rail, bestStepUp(rail)));
        sweep = findSweep();
    }

    /** In the order of time. */
    public List<OperatingPoint> all() {
        return all;
    }

    public Optional<Design> design() {
        return design;
    }

    /** Names of the rails, in the sheet's order. */
    public List<String> rails() {
        return rails;
    }

    /** Full load of a rail, A: the sheet's, else that of the largest step with equal loads; empty where none is. */
    public OptionalDouble fullLoad(String rail) {
        Double amperes = fullLoads.get(rail);
        return amperes == null ? OptionalDouble.empty() : OptionalDouble.of(amperes);
    }

    private OptionalDouble statedFullLoad(String rail, OptionalDouble largestEqual) {
        OptionalDouble stated = design.flatMap(sheet -> sheet.rail(rail))
                .map(Rail::fullLoadAmperes)
                .orElse(OptionalDouble.empty());
        return stated.isPresent() ? stated : largestEqual;
    }

    private OptionalDouble largestEqualLoad() {
        OptionalDouble largest = all.stream()
                .filter(this::measuresAllRails)
                .filter(point -> spread(currents(point)) <= 2 * STEP_WIDTH)
                .flatMapToDouble(point -> currents(point).average().stream())
                .max();
        return largest.isPresent() && largest.getAsDouble() > 0 ? largest : OptionalDouble.empty();
    }

    private DoubleStream currents(OperatingPoint point) {
        return rails.stream()
                .mapToDouble(rail -> point.rails().get(rail).current().value());
    }

    private static double spread(DoubleStream values) {
        var summary = values.summaryStatistics();
        return summary.getMax() <= 0 ? 0 : (summary.getMax() - summary.getMin()) / summary.getMax();
    }

    private boolean measuresAllRails(OperatingPoint point) {
        return !rails.isEmpty() && point.rails().keySet().containsAll(rails);
    }

    /** A rail's load over its full load; empty where either is not known. */
    public OptionalDouble fraction(OperatingPoint point, String rail) {
        OptionalDouble full = fullLoad(rail);
        Optional<RailPoint> at = point.rail(rail);
        return full.isPresent() && at.isPresent()
                ? OptionalDouble.of(at.get().current().value() / full.getAsDouble())
                : OptionalDouble.empty();
    }

    /** The load of all rails over full load, if they are loaded alike; empty otherwise. */
    public OptionalDouble fraction(OperatingPoint point) {
        double[] fractions = rails.stream()
                .map(rail -> fraction(point, rail))
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .toArray();
        if (fractions.length < rails.size() || fractions.length == 0) {
            return OptionalDouble.empty();
        }
        var summary = DoubleStream.of(fractions).summaryStatistics();
        boolean alike = summary.getMax() - summary.getMin() <= 2 * STEP_WIDTH;
        return alike ? OptionalDouble.of(summary.getAverage()) : OptionalDouble.empty();
    }

    /** Whether the point is that step: 0.25 means 25 % of full load within 2.5 hundredths. */
    boolean isStep(OperatingPoint point, double wanted) {
        OptionalDouble fraction = fraction(point);
        return fraction.isPresent() && Math.abs(fraction.getAsDouble() - wanted) <= STEP_WIDTH + 1e-9;
    }

    /** Points of a stage. */
    public List<OperatingPoint> stage(String stage) {
        return all.stream().filter(point -> point.stage().equals(stage)).toList();
    }

    /** Points of the load sweep: all rails loaded alike or not at all, at the nominal input, the unit on and up. */
    public List<OperatingPoint> sweep() {
        return sweep;
    }

    private List<OperatingPoint> findSweep() {
        return all.stream()
                .filter(point -> !NOT_OF_THE_SWEEP.contains(point.stage()))
                .filter(point -> fraction(point).isPresent() || idle(point))
                .filter(point -> up(point) || collapsed(point))
                .toList();
    }

    /** Rails that give way under a load they still feed are what the test is there to find. */
    private boolean collapsed(OperatingPoint point) {
        return measuresAllRails(point)
                && !idle(point)
                && rails.stream()
                        .allMatch(rail -> point.rails().get(rail).current().value() > leastLoad(rail));
    }

    /** Points of the load sweep that carry a load. */
    public List<OperatingPoint> loaded() {
        return sweep().stream().filter(point -> !idle(point)).toList();
    }

    /** Points with the unit on and no load at the nominal input. */
    public Optional<OperatingPoint> noLoad() {
        return sweep().stream().filter(this::idle).findFirst();
    }

    /** The first point at full load on all rails; a hold at full load counts where the sweep has none. */
    public Optional<OperatingPoint> fullLoad() {
        return step(1.0).or(() -> held(1.0));
    }

    /** The first point of the sweep at that share of full load. */
    public Optional<OperatingPoint> step(double fraction) {
        return loaded().stream().filter(point -> isStep(point, fraction)).findFirst();
    }

    private Optional<OperatingPoint> held(double fraction) {
        return stage("hold").stream()
                .filter(this::up)
                .filter(point -> isStep(point, fraction))
                .findFirst();
    }

    /** Whether no rail carries a load. */
    boolean idle(OperatingPoint point) {
        return rails.stream().allMatch(rail -> point.rail(rail)
                .map(at -> at.current().value() <= leastLoad(rail))
                .orElse(false));
    }

    private double leastLoad(String rail) {
        OptionalDouble full = fullLoad(rail);
        return full.isPresent() ? LEAST_LOAD * full.getAsDouble() : 1e-9;
    }

    /**
     * Whether all rails are up: each at least half of what the same input gave at best under load (without load a choke may
     * run empty and its rail rise far above), a regulated one at least half of its nominal voltage whatever the input. A
     * unit that has dropped out, or is off, is not.
     */
    boolean up(OperatingPoint point) {
        return measuresAllRails(point) && rails.stream().allMatch(rail -> up(point, rail));
    }

    private boolean up(OperatingPoint point, String rail) {
        OptionalDouble held = heldVolts(rail);
        return held.isPresent()
                ? Math.abs(point.rails().get(rail).voltage().value()) >= held.getAsDouble() / 2
                : best.get(rail) > 0 && stepUp(point, rail) >= best.get(rail) / 2;
    }

    /** Nominal magnitude of a rail that is regulated, V; empty for one that is not, or without a sheet. */
    private OptionalDouble heldVolts(String rail) {
        return design.flatMap(sheet -> sheet.rail(rail).filter(sheet::regulates))
                .map(one -> OptionalDouble.of(Math.abs(one.nominalVolts())))
                .orElse(OptionalDouble.empty());
    }

    /** Whether a regulated rail no longer holds its voltage there: it lies below what it held at best by 3 % or more. */
    boolean outOfRegulation(OperatingPoint point, String rail) {
        return heldVolts(rail).isPresent()
                && Math.abs(point.rails().get(rail).voltage().value())
                        < HELD
                                * all.stream()
                                        .filter(this::up)
                                        .mapToDouble(one -> Math.abs(
                                                one.rails().get(rail).voltage().value()))
                                        .max()
                                        .orElse(0);
    }

    private double bestStepUp(String rail) {
        double loaded = all.stream()
                .filter(point -> !idle(point))
                .mapToDouble(point -> stepUp(point, rail))
                .max()
                .orElse(0);
        return loaded > 0
                ? loaded
                : all.stream().mapToDouble(point -> stepUp(point, rail)).max().orElse(0);
    }

    private static double stepUp(OperatingPoint point, String rail) {
        double volts = point.input().voltage().value();
        return point.rail(rail)
                .map(at -> volts > 0 ? Math.abs(at.voltage().value()) / volts : 0)
                .orElse(0.0);
    }
}
