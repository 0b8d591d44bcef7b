package railwitness.analysis.cause;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import railwitness.analysis.supply.OperatingPoint;

/**
 * How warm the unit was at each point: by the warmest thermometer on it, where one was read at every point; else it is
 * supposed to warm evenly over the session.
 */
final class Warmth {
    /** Nothing that opens or closes with heat is seen where the unit warmed by less, K (common practice, no source). */
    private static final double LEAST_KELVIN = 5;

    /** What a session without a thermometer is supposed to warm the unit by, K (common practice, no source). */
    private static final double SUPPOSED_KELVIN = 10;

    private static final Set<String> ROOM = Set.of("ambient", "room");

    private final double[] kelvin;

    private Warmth(double[] degrees) {
        double least = Arrays.stream(degrees).min().orElse(0);
        this.kelvin = Arrays.stream(degrees).map(each -> each - least).toArray();
    }

    static Warmth of(List<OperatingPoint> points) {
        double[] degrees = points.stream().mapToDouble(Warmth::warmest).toArray();
        if (Arrays.stream(degrees).allMatch(Double::isFinite)) {
            return new Warmth(degrees);
        }
        double first = points.get(0).fromSeconds();
        double span = points.get(points.size() - 1).fromSeconds() - first;
        return new Warmth(points.stream()
                .mapToDouble(point -> span > 0 ? SUPPOSED_KELVIN * (point.fromSeconds() - first) / span : 0)
                .toArray());
    }

    private static double warmest(OperatingPoint point) {
        return point.temperatures().entrySet().stream()
                .filter(place -> !ROOM.contains(place.getKey()))
                .mapToDouble(place -> place.getValue().value())
                .max()
                .orElse(Double.NaN);
    }

    /** Above the coolest point, K; 0 where a drain of standby is all that was measured. */
    double kelvin(int point) {
        return point < kelvin.length ? kelvin[point] : 0;
    }

    /** From the coolest point to the warmest, 0 to 1. */
    double share(int point) {
        double most = most();
        return most > 0 ? kelvin(point) / most : 0;
    }

    /** Whether the unit warmed so far that a fault of heat could show. */
    boolean shows() {
        return most() >= LEAST_KELVIN;
    }

    private double most() {
        return Arrays.stream(kelvin).max().orElse(0);
    }
}
