package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleSupplier;
import railwitness.analysis.supply.InputSource;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.PointBuilder;
import railwitness.drivers.converter.Balance;
import railwitness.drivers.converter.ConverterModel;
import railwitness.drivers.converter.Draw;
import railwitness.drivers.converter.Feed;
import railwitness.drivers.converter.Specimen;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.record.RunSetup;
import railwitness.logger.recording.sheet.Sheets;

/** One unit on the steps of a plan: the true state at each, settled and at 25 degC. */
final class StudyUnit {
    private static final String LOAD_SWEEP = "load-sweep";
    private static final double LIMIT_AMPS = 40;
    private static final double DEG_C = 25;
    private static final double BAND_LOW_HZ = 20;
    private static final double BAND_HIGH_HZ = 300_000;

    private record State(Step step, double inputVolts, double inputAmps, List<Rail> rails) {}

    private record Rail(String name, double volts, double amps, double ripple) {}

    private final Specimen specimen;
    private final List<State> states = new ArrayList<>();

    StudyUnit(Sheets sheets, Specimen specimen) {
        this(sheets, specimen, () -> 1);
    }

    private StudyUnit(Sheets sheets, Specimen specimen, DoubleSupplier otherwise) {
        this.specimen = specimen;
        for (Step step :
                sheets.plan().content().steps(RunSetup.ratingOf(sheets.design().content()))) {
            boolean sweep = step.stage().equals(LOAD_SWEEP);
            states.add(step.remoteOn() ? running(step, sweep ? otherwise.getAsDouble() : 1) : standby(step));
        }
    }

    /** The same unit where the load sweep happens to be done at other loads of the same range. */
    StudyUnit atOtherLoads(Sheets sheets, Random random) {
        List<Double> full = new ArrayList<>();
        states.stream()
                .filter(state -> state.step().stage().equals(LOAD_SWEEP))
                .forEach(state -> full.add(state.rails().get(0).amps()));
        double highest = full.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        double lowest = full.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
        Iterator<Double> each = full.iterator();
        return new StudyUnit(sheets, specimen, () -> (lowest + random.nextDouble() * (highest - lowest)) / each.next());
    }

    private State standby(Step step) {
        return new State(
                step,
                step.inputVolts(),
                specimen.drive().standbyAmps(),
                specimen.rails().stream()
                        .map(rail -> new Rail(rail.name(), 0, 0, 0))
                        .toList());
    }

    private State running(Step step, double share) {
        List<Draw> draws = specimen.rails().stream()
                .map(rail -> Draw.amps(share * step.loadAmps().getOrDefault(rail.name(), 0.0)))
                .toList();
        Balance balance =
                new ConverterModel(specimen).settled(Feed.of(step.inputVolts(), LIMIT_AMPS), draws, DEG_C, DEG_C);
        return new State(
                step,
                balance.terminalVolts(),
                balance.inputAmps(),
                balance.rails().stream()
                        .map(rail -> new Rail(
                                rail.name(),
                                rail.volts(),
                                rail.amps(),
                                rail.ripple().rmsVolts(BAND_LOW_HZ, BAND_HIGH_HZ)))
                        .toList());
    }

    /** The points as these instruments read them. */
    List<OperatingPoint> points(StudyBench bench) {
        readings(bench);
        return readings(bench);
    }

    /** The first time everything is read; the second time the means are taken, with what all steps together have taught. */
    private List<OperatingPoint> readings(StudyBench bench) {
        List<OperatingPoint> points = new ArrayList<>();
        for (State state : states) {
            points.add(point(state, bench, 10.0 * points.size()));
        }
        return points;
    }

    private static OperatingPoint point(State state, StudyBench bench, double seconds) {
        String where = state.step().stage() + " " + state.step().name() + " at " + seconds + " s";
        PointBuilder builder = OperatingPoint.of(
                        state.step().stage(), state.step().name())
                .during(seconds, seconds + 5)
                .setVolts(state.step().inputVolts());
        builder.inputVoltage(bench.read("input.voltage", state.inputVolts(), where), InputSource.TERMINALS);
        builder.inputCurrent(bench.read("input.current", state.inputAmps(), where));
        for (Rail rail : state.rails()) {
            builder.railVoltage(rail.name(), bench.read(rail.name() + ".voltage", rail.volts(), where));
            if (rail.amps() > 0) {
                builder.railCurrent(rail.name(), bench.read(rail.name() + ".current", rail.amps(), where));
            }
            builder.ripple(rail.name(), bench.read(rail.name() + ".ripple", rail.ripple(), where));
        }
        return builder.build();
    }
}
