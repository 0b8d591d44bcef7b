package railwitness.logger.reporting.chart;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.logger.reporting.findings.SessionFindings;

/** The current without load over the input's voltage: at the knee the core saturates. */
public final class IdleChart {
    private static final double PROBABILITY = 0.95;
    private static final double NO_LOAD_AMPS = 0.005;

    private IdleChart() {}

    /** Empty where a session did not measure a transformer, or has fewer than three such points. */
    public static Optional<Chart> of(SessionFindings session) {
        List<OperatingPoint> idle = session.findings().points().stream()
                .filter(point -> point.stage().equals("line-sweep"))
                .filter(point -> point.rails().values().stream()
                        .allMatch(rail -> Math.abs(rail.current().value()) < NO_LOAD_AMPS))
                .sorted(Comparator.comparingDouble(IdleChart::volts))
                .toList();
        if (session.wound().isEmpty() || idle.size() < 3) {
            return Optional.empty();
        }
        Curve curve = Curve.measured(
                "",
                idle.stream().mapToDouble(IdleChart::volts).toArray(),
                idle.stream()
                        .mapToDouble(point -> point.input().current().value())
                        .toArray(),
                idle.stream().mapToDouble(IdleChart::expanded).toArray(),
                OptionalInt.empty());
        return Optional.of(new Chart("Idle current against input", "A", "V", List.of(curve), List.of()));
    }

    private static double volts(OperatingPoint point) {
        return point.input().voltage().value();
    }

    private static double expanded(OperatingPoint point) {
        var current = point.input().current();
        return current.known() && current.u() > 0
                ? current.coverage(PROBABILITY).expanded()
                : 0;
    }
}
