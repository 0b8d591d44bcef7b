package railwitness.drivers.sheet;

import java.util.Optional;
import java.util.OptionalDouble;

/** A number being asked for; infinities and NaN are refused. */
public final class NumberKey extends SheetKey<Double> {
    NumberKey(KeyPlace place) {
        super(place, NumberKey::isFinite, raw -> ((Number) raw).doubleValue(), 1.0);
    }

    static boolean isFinite(Object raw) {
        return raw instanceof Number number && Double.isFinite(number.doubleValue());
    }

    /** Both ends included. */
    public NumberKey between(double lowest, double highest) {
        allow(value -> value >= lowest && value <= highest, Bounds.between(lowest, highest, unit()));
        return this;
    }

    public NumberKey atLeast(double lowest) {
        allow(value -> value >= lowest, Bounds.one("at least", lowest, unit()));
        return this;
    }

    public NumberKey above(double bound) {
        allow(value -> value > bound, Bounds.one("above", bound, unit()));
        return this;
    }

    public NumberKey atMost(double highest) {
        allow(value -> value <= highest, Bounds.one("at most", highest, unit()));
        return this;
    }

    public NumberKey below(double bound) {
        allow(value -> value < bound, Bounds.one("below", bound, unit()));
        return this;
    }

    /** The number, where it is given. */
    public OptionalDouble optionalNumber() {
        Optional<Double> value = optional();
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }
}
