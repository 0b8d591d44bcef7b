package railwitness.analysis.cause;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.Points;
import railwitness.analysis.uncertainty.Estimate;

/**
 * The operating points a diagnosis looks at.
 *
 * @param idle without load
 * @param light lowest load with all rails alike, 8 % of full load or more
 * @param heavy highest such load
 */
record Bench(
        Design design,
        Transformer transformer,
        Points points,
        Optional<OperatingPoint> idle,
        Optional<OperatingPoint> light,
        Optional<OperatingPoint> heavy) {
    private static final double LEAST_LIGHT = 0.08;
    private static final double LEAST_SPREAD = 0.2;

    static Bench of(Design design, Transformer transformer, Points points) {
        List<OperatingPoint> loaded = points.loaded().stream()
                .filter(point -> points.fraction(point).orElse(0) >= LEAST_LIGHT)
                .sorted(java.util.Comparator.comparingDouble(
                        point -> points.fraction(point).orElse(0)))
                .toList();
        Optional<OperatingPoint> light = loaded.stream().findFirst();
        Optional<OperatingPoint> heavy =
                loaded.isEmpty() ? Optional.empty() : Optional.of(loaded.get(loaded.size() - 1));
        return new Bench(design, transformer, points, points.noLoad(), light, heavy);
    }

    /** Whether light and heavy load lie far enough apart to speak of a sag. */
    boolean sags() {
        return light.isPresent()
                && heavy.isPresent()
                && points.fraction(heavy.get()).orElse(0)
                                - points.fraction(light.get()).orElse(0)
                        >= LEAST_SPREAD;
    }

    /** The design's own slope of a rail against the input: ratio, with a choke times both duties; zero if regulated. */
    double slope() {
        if (design.converter().regulated()) {
            return 0;
        }
        OptionalDouble duties = design.converter().bothDuties();
        return switch (design.converter().filter()) {
            case CAPACITOR -> transformer.ratio();
            case CHOKE -> transformer.ratio() * duties.orElse(1);
        };
    }

    static Estimate volts(OperatingPoint point, String rail) {
        return point.rails().get(rail).voltage().abs();
    }

    static Estimate amperes(OperatingPoint point, String rail) {
        return point.rails().get(rail).current();
    }
}
