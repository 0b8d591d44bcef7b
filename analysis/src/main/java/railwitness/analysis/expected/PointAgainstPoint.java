package railwitness.analysis.expected;

import java.util.List;
import java.util.Optional;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;

/**
 * A rail under load against the same rail at light load: turns and duty, which move both, cancel, and a fall that is too
 * large shows even where the rail itself is still within what the sheet allows.
 */
final class PointAgainstPoint {
    private static final double MEANS_SOMETHING = 3;
    private static final double LEAST_LOAD = 0.2;

    private final List<OperatingPoint> points;
    private final Expectations expectations;
    private final double[] fullLoads;
    private final List<String> rails;

    PointAgainstPoint(List<OperatingPoint> points, Expectations expectations, List<String> rails, double[] fullLoads) {
        this.points = points;
        this.expectations = expectations;
        this.rails = rails;
        this.fullLoads = fullLoads;
    }

    void addTo(List<Deviation> found) {
        for (int rail = 0; rail < rails.size(); rail++) {
            OperatingPoint light = null;
            for (OperatingPoint point : points) {
                double load = load(point, rail);
                if (load >= LEAST_LOAD && (light == null || load < load(light, rail))) {
                    light = point;
                }
            }
            if (light != null) {
                ofRail(found, rail, light);
            }
        }
    }

    private double load(OperatingPoint point, int rail) {
        return expectations.at(point).any(Expected.voltage(rails.get(rail))).isEmpty()
                ? -1
                : point.rail(rails.get(rail))
                        .map(at -> at.current().value() / fullLoads[rail])
                        .orElse(-1.0);
    }

    private void ofRail(List<Deviation> found, int rail, OperatingPoint light) {
        for (OperatingPoint heavy : points) {
            if (load(heavy, rail) > 2 * load(light, rail)) {
                pair(found, rails.get(rail), light, heavy);
            }
        }
    }

    private void pair(List<Deviation> found, String rail, OperatingPoint light, OperatingPoint heavy) {
        Estimate before = light.rails().get(rail).voltage();
        Estimate after = heavy.rails().get(rail).voltage();
        Estimate expectedBefore =
                expectations.at(light).any(Expected.voltage(rail)).orElseThrow();
        Estimate expectedAfter =
                expectations.at(heavy).any(Expected.voltage(rail)).orElseThrow();
        if (before.value() * after.value() <= 0 || before.value() * expectedBefore.value() <= 0) {
            return;
        }
        Estimate measured = after.over(before);
        Estimate expected = expectedAfter.over(expectedBefore);
        double difference = Math.log(measured.value() / expected.value());
        double u = Math.hypot(measured.u() / measured.value(), expected.u() / expected.value());
        boolean already = found.stream()
                .anyMatch(one -> one.what().equals("voltage")
                        && one.rail().equals(Optional.of(rail))
                        && one.stage().equals(heavy.stage())
                        && one.step().equals(heavy.step()));
        if (u > 0 && difference < -MEANS_SOMETHING * u && !already) {
            found.add(new Deviation(
                    "voltage",
                    Optional.of(rail),
                    heavy.stage(),
                    heavy.step(),
                    after,
                    before.times(expected),
                    difference / u));
        }
    }
}
