package railwitness.analysis.expected;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;

/** Finds what is not as expected: further off than two and a half standard uncertainties of measured less expected. */
public final class Deviations {
    /** In standard uncertainties: beyond it lies one in eighty. A session compares dozens of values at once. */
    public static final double MEANS_SOMETHING = 2.5;

    private Deviations() {}

    /** All deviations, the largest first. */
    public static List<Deviation> of(List<OperatingPoint> points, Expectations expectations) {
        List<Deviation> found = new ArrayList<>();
        for (OperatingPoint point : points) {
            Expected expected = expectations.at(point);
            add(
                    found,
                    point,
                    Expected.INPUT_CURRENT,
                    Optional.empty(),
                    point.input().current(),
                    expected);
            add(found, point, Expected.LOSS, Optional.empty(), point.loss(), expected);
            point.efficiency()
                    .ifPresent(value -> add(found, point, Expected.EFFICIENCY, Optional.empty(), value, expected));
            point.rails().forEach((name, rail) -> ofRail(found, point, name, rail, expected));
            new RailAgainstRail(point, expected).addTo(found);
        }
        expectations.fallUnderLoad(points).addTo(found);
        found.sort(Comparator.comparingDouble(deviation -> -Math.abs(deviation.timesU())));
        return List.copyOf(found);
    }

    private static void ofRail(
            List<Deviation> found, OperatingPoint point, String name, RailPoint rail, Expected expected) {
        add(found, point, "voltage", Optional.of(name), rail.voltage(), expected);
        rail.rippleRms().ifPresent(ripple -> add(found, point, "ripple", Optional.of(name), ripple, expected));
    }

    private static void add(
            List<Deviation> found,
            OperatingPoint point,
            String what,
            Optional<String> rail,
            Estimate measured,
            Expected expected) {
        String key = rail.map(name -> name + "." + what).orElse(what);
        expected.value(key).ifPresent(value -> {
            double times = times(measured, value);
            if (Math.abs(times) > MEANS_SOMETHING && alsoAsAFactor(measured, value)) {
                found.add(new Deviation(what, rail, point.stage(), point.step(), measured, value, times));
            }
        });
    }

    /**
     * What a sheet leaves open may be more by a factor, so that an expectation's upper side is wider than its lower: a value
     * above it is off only where it is so as a factor too.
     */
    private static boolean alsoAsAFactor(Estimate measured, Estimate expected) {
        double factor = measured.value() / expected.value();
        double u = Math.hypot(measured.u() / measured.value(), expected.u() / expected.value());
        return !(factor > 1) || Math.log(factor) > MEANS_SOMETHING * u;
    }

    /**
     * Measured less expected in standard uncertainties. The expectation is of a positive quantity whose uncertainty is
     * relative, so logarithms are compared where it is more than a few percent.
     */
    public static double times(Estimate measured, Estimate expected) {
        double difference = Math.abs(measured.value()) - Math.abs(expected.value());
        if (measured.value() * expected.value() < 0) {
            difference = -Math.abs(measured.value()) - Math.abs(expected.value());
        }
        double u = Math.hypot(measured.u(), expected.u());
        return u > 0 ? difference / u : difference == 0 ? 0 : Math.signum(difference) * 1e3;
    }
}
