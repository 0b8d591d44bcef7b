package railwitness.drivers.instrument;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One setting of an instrument, as it read back when it was set: what reads back otherwise later, and again when it is
 * asked once more, was changed by hand or by the instrument itself.
 */
final class HeldSetting {
    private static final double SHARE = 2e-3;
    private static final double LEAST = 0.02;
    private static final int BELIEVED = 2;

    private final String what;
    private final String unit;
    private final double resolution;
    private OptionalDouble told = OptionalDouble.empty();
    private int times;

    /** @param resolution a change of no more is none; in the setting's unit, zero or more */
    HeldSetting(String what, String unit, double resolution) {
        this.what = what;
        this.unit = unit;
        this.resolution = resolution;
    }

    /** It is about to be set anew. */
    void forget() {
        told = OptionalDouble.empty();
        times = 0;
    }

    /** What it reads back; the first after it was set is what it is held against. */
    void readBack(double value) {
        if (told.isEmpty()) {
            told = OptionalDouble.of(value);
        }
    }

    boolean isHeld() {
        return told.isPresent();
    }

    /** True while one more look must tell whether it has changed. */
    boolean doubted() {
        return times > 0;
    }

    /** What it reads back now; in words what is not as it was set, once that is certain. */
    Optional<String> now(double value) {
        double was = told.orElse(value);
        boolean same = Math.abs(value - was) <= Math.max(Math.max(resolution, LEAST), SHARE * Math.abs(was));
        times = same ? 0 : times + 1;
        return times < BELIEVED
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "its %s was set to %.4g %s and reads back %.4g %s now: it was changed by hand, or the supply has"
                                + " reset itself",
                        what,
                        was,
                        unit,
                        value,
                        unit));
    }
}
