package railwitness.analysis.contradiction;

import java.util.List;
import java.util.OptionalDouble;
import railwitness.analysis.supply.OperatingPoint;

/**
 * Everything that may bear witness in one session.
 *
 * @param testimonies step by step
 * @param soleSource nothing but the supply feeds the input: then its own readings must agree with the input's
 * @param supplyAmps the most the supply can give, A, where known
 */
public record Witnesses(List<Testimony> testimonies, boolean soleSource, OptionalDouble supplyAmps) {
    public Witnesses {
        testimonies = List.copyOf(testimonies);
    }

    /** Points alone. */
    public static Witnesses of(List<OperatingPoint> points) {
        return new Witnesses(points.stream().map(Testimony::of).toList(), false, OptionalDouble.empty());
    }
}
