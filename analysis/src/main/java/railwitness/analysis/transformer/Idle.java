package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Filter;
import railwitness.analysis.design.Switches;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * What a unit draws without load, over its input voltage: core loss at nominal input, and where the core saturates.
 *
 * @param coreWatts empty where no point without load lies near nominal input
 * @param knee empty where none is seen
 * @param why what is missing for the core loss; empty where it is there
 * @param whyNoKnee what is missing for the knee; empty where it is there
 */
public record Idle(Optional<Estimate> coreWatts, Optional<Knee> knee, String why, String whyNoKnee) {
    /** Control, gates and switching are known from the sheet no better than this (common practice, no source). */
    private static final double SHEET_SHARE = 0.25;

    /** A core loss that grows with the input bends the course too; saturation does so by far more than that. */
    private static final double STEEP = 3;

    private static final double NEAR = 0.02;
    private static final double NO_LOAD_AMPS = 0.005;

    /** Nothing was read without load. */
    public static Idle none() {
        return of(List.of(), Optional.empty());
    }

    /** @param design the sheet, for nominal input and for what is not the core's */
    public static Idle of(List<OperatingPoint> points, Optional<Design> design) {
        List<OperatingPoint> idle = points.stream().filter(Idle::idle).toList();
        Optional<OperatingPoint> nominal = design.flatMap(sheet -> idle.stream()
                .filter(point ->
                        Math.abs(point.input().voltage().value() - sheet.input().nominalVolts())
                                < NEAR * sheet.input().nominalVolts())
                .findFirst());
        boolean known = design.filter(Idle::tellsTheRest).isPresent();
        Optional<Estimate> watts = known
                ? nominal.map(point -> coreWatts(point, design.get())).filter(core -> core.value() > 0)
                : Optional.empty();
        Optional<Knee> knee = knee(idle);
        return new Idle(
                watts,
                knee,
                watts.isPresent()
                        ? ""
                        : nominal.isPresent()
                                ? "the design sheet lacks control_A, gate_and_switching_W or bleeder_ohm, which are not the core's"
                                : "needs the unit without load at nominal input: a no-load stage of the plan",
                knee.isPresent()
                        ? ""
                        : differentInputs(idle) < 7
                                ? "needs at least seven input voltages without load: a line-sweep stage at load_pct 0"
                                : "the current without load keeps its straight course up to the highest input");
    }

    private static boolean tellsTheRest(Design design) {
        return design.converter().controlAmperes().isPresent()
                && design.switches()
                        .map(Switches::gateAndSwitchingWatts)
                        .filter(OptionalDouble::isPresent)
                        .isPresent()
                && design.filter()
                        .map(Filter::bleederOhms)
                        .filter(OptionalDouble::isPresent)
                        .isPresent();
    }

    private static boolean idle(OperatingPoint point) {
        return !point.stage().equals("standby")
                && !point.rails().isEmpty()
                && point.rails().values().stream()
                        .allMatch(rail -> Math.abs(rail.current().value()) < NO_LOAD_AMPS
                                && Math.abs(rail.voltage().value()) > 1);
    }

    private static long differentInputs(List<OperatingPoint> idle) {
        return idle.stream()
                .map(point -> Math.round(10 * point.input().voltage().value()))
                .distinct()
                .count();
    }

    private static Estimate coreWatts(OperatingPoint point, Design design) {
        double beside = design.converter().controlAmperes().getAsDouble()
                        * point.input().voltage().value()
                + design.switches().orElseThrow().gateAndSwitchingWatts().getAsDouble()
                + bleeders(point, design.filter().orElseThrow().bleederOhms().getAsDouble());
        Estimate others = Estimate.of(
                beside,
                Influence.rectangular("control, gates, switching and bleeders by the sheet", SHEET_SHARE * beside, "W")
                        .times(1));
        return point.input().power().minus(others);
    }

    private static double bleeders(OperatingPoint point, double ohms) {
        return point.rails().values().stream()
                .mapToDouble(rail -> rail.voltage().value() * rail.voltage().value() / ohms)
                .sum();
    }

    private static Optional<Knee> knee(List<OperatingPoint> idle) {
        if (differentInputs(idle) < 7) {
            return Optional.empty();
        }
        List<Knee.Point> course = new ArrayList<>();
        idle.forEach(point -> course.add(new Knee.Point(
                point.input().voltage().value(), point.input().current().value())));
        return Knee.find(course).filter(knee -> knee.slopeBeyond() > STEEP * Math.max(0, knee.slopeBefore()));
    }
}
