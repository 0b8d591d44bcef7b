package railwitness.analysis.cause;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * One thing measured, to be held against what a fault predicts.
 *
 * @param sign what
 * @param rail of which rail, where it is of one
 * @param measured in the sign's unit
 * @param tolerance standard uncertainty of the prediction itself: relative where the sign is logarithmic
 */
record Symptom(Sign sign, Optional<String> rail, Estimate measured, double tolerance) {

    /** Key of a sign and rail in what is expected. */
    static String key(Sign sign, Optional<String> rail) {
        return sign + rail.map(name -> " " + name).orElse("");
    }

    String key() {
        return key(sign, rail);
    }

    /** Distance from what is expected, in standard uncertainties of both. */
    double distance(Map<String, Double> expected) {
        double value = expected.get(key());
        if (!sign.logarithmic()) {
            return (measured.value() - value) / Math.hypot(measured.u(), tolerance);
        }
        double u = measured.u() / Math.max(Math.abs(measured.value()), 1e-12);
        return Math.log(Math.max(measured.value(), 1e-9) / Math.max(value, 1e-9)) / Math.hypot(u, tolerance);
    }

    /** Both values in words. */
    String words(Map<String, Double> expected) {
        String unit = sign.unit().isEmpty() ? "" : " " + sign.unit();
        return String.format(
                Locale.ROOT,
                "%s%s: %.3g%s, expected %.3g%s",
                sign.words(),
                rail.map(name -> " " + name).orElse(""),
                measured.value(),
                unit,
                expected.get(key()),
                unit);
    }
}
