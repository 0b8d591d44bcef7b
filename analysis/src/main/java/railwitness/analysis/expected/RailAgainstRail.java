package railwitness.analysis.expected;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;

/**
 * One rail against the others at the same point: parts that all rails share, known or not, cancel. What a rail is to be
 * expected at is then what the rail that is nearest to the sheet leads to; so a rail that is off by itself is found on
 * any sheet.
 */
final class RailAgainstRail {
    private static final double MEANS_SOMETHING = 3;
    private static final double LEAST_SHARE = 0.02;

    private final OperatingPoint point;
    private final Expected expected;

    RailAgainstRail(OperatingPoint point, Expected expected) {
        this.point = point;
        this.expected = expected;
    }

    void addTo(List<Deviation> found) {
        pairs(found, "voltage", rail -> Optional.of(rail.voltage()));
        pairs(found, "ripple", RailPoint::rippleRms);
    }

    private void pairs(List<Deviation> found, String what, Function<RailPoint, Optional<Estimate>> reading) {
        List<String> rails = List.copyOf(point.rails().keySet());
        for (int i = 0; i < rails.size(); i++) {
            for (int j = i + 1; j < rails.size(); j++) {
                pair(found, what, rails.get(i), rails.get(j), reading);
            }
        }
    }

    private void pair(
            List<Deviation> found,
            String what,
            String one,
            String other,
            Function<RailPoint, Optional<Estimate>> reading) {
        Optional<Estimate> first = reading.apply(point.rails().get(one)).map(Estimate::abs);
        Optional<Estimate> second = reading.apply(point.rails().get(other)).map(Estimate::abs);
        Optional<Estimate> firstExpected = expected.any(one + "." + what).map(Estimate::abs);
        Optional<Estimate> secondExpected = expected.any(other + "." + what).map(Estimate::abs);
        if (first.isEmpty() || second.isEmpty() || firstExpected.isEmpty() || secondExpected.isEmpty()) {
            return;
        }
        if (Math.min(first.get().value(), second.get().value()) <= 0) {
            return;
        }
        Estimate measuredRatio = first.get().over(second.get());
        Estimate expectedRatio = firstExpected.get().over(secondExpected.get());
        double log = Math.log(measuredRatio.value() / expectedRatio.value());
        double u = Math.hypot(measuredRatio.u() / measuredRatio.value(), expectedRatio.u() / expectedRatio.value());
        if (u == 0 || Math.abs(log) / u <= MEANS_SOMETHING || Math.abs(log) < LEAST_SHARE / 4) {
            return;
        }
        boolean firstIsOff = what.equals("ripple") ? log > 0 : log < 0;
        String off = firstIsOff ? one : other;
        boolean already = found.stream()
                .anyMatch(deviation -> deviation.what().equals(what)
                        && deviation.rail().equals(Optional.of(off))
                        && deviation.stage().equals(point.stage())
                        && deviation.step().equals(point.step()));
        if (already) {
            return;
        }
        Estimate measured = reading.apply(point.rails().get(off)).orElseThrow();
        Estimate from =
                firstIsOff ? second.get().times(expectedRatio) : first.get().over(expectedRatio);
        Estimate signed = measured.value() < 0 ? from.negate() : from;
        double times = Math.abs(log) / u * (what.equals("ripple") ? 1 : -1);
        found.add(new Deviation(what, Optional.of(off), point.stage(), point.step(), measured, signed, times));
    }
}
