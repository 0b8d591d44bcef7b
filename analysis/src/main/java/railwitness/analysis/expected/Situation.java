package railwitness.analysis.expected;

import java.util.List;
import java.util.OptionalDouble;
import railwitness.analysis.converter.Converter;
import railwitness.analysis.converter.Parts;
import railwitness.analysis.converter.Result;
import railwitness.analysis.design.Design;
import railwitness.analysis.supply.OperatingPoint;

/**
 * What is put to the unit at a point: the forward model's input.
 *
 * @param inputVolts at the terminals, V
 * @param loads of each rail of the sheet, A
 * @param fractions of full load, where that is known; else of the largest load of the session
 */
public record Situation(double inputVolts, double[] loads, double[] fractions) {
    private static final double LEAST_INPUT_SHARE = 0.7;
    private static final double BELOW_LOWEST = 0.9;
    private static final List<String> UNIT_OFF = List.of("standby");

    /** Whether the model speaks of that point: the unit is on, its input near what the sheet plans, all rails measured. */
    public static boolean covers(Design design, OperatingPoint point) {
        double volts = point.input().voltage().value();
        OptionalDouble lowest = design.input().lowestVolts();
        double least = lowest.isPresent()
                ? BELOW_LOWEST * lowest.getAsDouble()
                : LEAST_INPUT_SHARE * design.input().nominalVolts();
        return !UNIT_OFF.contains(point.stage())
                && volts >= least
                && design.rails().stream()
                        .anyMatch(rail -> point.rail(rail.name()).isPresent());
    }

    /**
     * @param point one that is covered
     * @param fullLoads A, of each rail
     */
    public static Situation of(Design design, OperatingPoint point, double[] fullLoads) {
        int rails = design.rails().size();
        double[] loads = new double[rails];
        double[] fractions = new double[rails];
        for (int rail = 0; rail < rails; rail++) {
            loads[rail] = point.rail(design.rails().get(rail).name())
                    .map(at -> Math.max(0, at.current().value()))
                    .orElse(0.0);
            fractions[rail] = loads[rail] / fullLoads[rail];
        }
        return new Situation(point.input().voltage().value(), loads, fractions);
    }

    /** Full load of each rail, A: the sheet's, else the session's largest. */
    public static double[] fullLoads(Design design, List<OperatingPoint> points) {
        return design.rails().stream()
                .mapToDouble(rail -> rail.fullLoadAmperes().orElseGet(() -> points.stream()
                        .flatMap(point -> point.rail(rail.name()).stream())
                        .mapToDouble(at -> at.current().value())
                        .filter(amperes -> amperes > 0)
                        .max()
                        .orElse(1)))
                .toArray();
    }

    public Result of(Parts parts) {
        return Converter.at(parts, inputVolts, loads);
    }

    /** The same, found faster from a result of nearly the same parts; null where there is none. */
    public Result of(Parts parts, Result near) {
        return Converter.near(near, parts, inputVolts, loads);
    }

    /** Mean of the rails' fractions. */
    public double fraction() {
        double sum = 0;
        for (double fraction : fractions) {
            sum += fraction;
        }
        return sum / fractions.length;
    }
}
