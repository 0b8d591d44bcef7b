package railwitness.analysis.soak;

import java.util.Locale;
import java.util.OptionalDouble;

/**
 * When a temperature counts as steady. The standards disagree, so whoever says 'steady' names the rule. Each limit as
 * quoted in public discussion of the standards; the standards themselves decide.
 */
public enum StabilityRule {
    IEC_60034_1("IEC 60034-1: gradient at most 2 K/h", new Gradient(2, 1800)),
    IEC_61010_1("IEC 61010-1 practice: at most 2 K in 1 h", new Change(2, 3600)),
    IEC_62368_1("IEC 62368-1 B.1.6: at most 3 K in 30 min", new Change(3, 1800)),
    IEC_62368_1_BELOW_LIMIT(
            "IEC 62368-1 B.1.6: at most 1 K in 5 min, at least 10 % below the limit", new Change(1, 300)),
    IEC_61810_7("IEC 61810-7: less than 1 K between any two of three readings 5 min apart", new Apart(1, 300, 3)),
    IEC_60598("IEC 60598: at most 1 K in 1 h", new Change(1, 3600)),
    IEC_62282_2("IEC 62282-2: at most 3 K between readings 15 min apart", new Apart(3, 900, 2)),
    IEEE_2780("IEEE 2780: at most 2 K in 15 min", new Change(2, 900)),
    ONE_KELVIN_PER_HOUR("gradient at most 1 K/h (common practice, no source)", new Gradient(1, 3600));

    private static final int LOOKS = 400;

    private final String words;
    private final Criterion criterion;

    StabilityRule(String words, Criterion criterion) {
        this.words = words;
        this.criterion = criterion;
    }

    /** The standard alone, by which a plan names the rule; {@code 1 K/h} for the one that is of none. */
    public String standard() {
        return switch (this) {
            case ONE_KELVIN_PER_HOUR -> "1 K/h";
            case IEC_62368_1_BELOW_LIMIT -> "IEC 62368-1 short";
            default -> words.replaceAll("^(IEC \\d+-?\\d*|IEEE \\d+).*$", "$1");
        };
    }

    /** Length of record the rule looks at, s. */
    public double needsSeconds() {
        return criterion.needsSeconds();
    }

    /** Standard and limit, for print. */
    public String words() {
        return words;
    }

    /**
     * Whether the record is steady at its end.
     *
     * @param seconds time of each reading, not falling
     * @param celsius temperature, or any value in kelvin steps
     */
    public Stability at(double[] seconds, double[] celsius) {
        return judge(new Series(seconds, celsius, celsius.length - 1));
    }

    /**
     * As {@link #at}, and at least 10 % below a limit, which {@link #IEC_62368_1_BELOW_LIMIT} asks for.
     *
     * @param limitCelsius the temperature the part may reach
     */
    public Stability belowLimit(double[] seconds, double[] celsius, double limitCelsius) {
        double last = celsius[celsius.length - 1];
        if (last > 0.9 * limitCelsius) {
            String reason = String.format(Locale.ROOT, "%.1f is not 10 %% below the limit of %.1f", last, limitCelsius);
            return new Stability(this, false, OptionalDouble.empty(), reason);
        }
        return at(seconds, celsius);
    }

    /**
     * The first time at which the rule is met, in seconds of the record's own clock, looked for at some 400 places
     * spread over it; absent where it never is.
     */
    public OptionalDouble firstMet(double[] seconds, double[] celsius) {
        int n = celsius.length;
        for (int look = 1; look <= LOOKS; look++) {
            int end = (int) ((long) (n - 1) * look / LOOKS);
            if (judge(new Series(seconds, celsius, end)).steady()) {
                return OptionalDouble.of(seconds[end]);
            }
        }
        return OptionalDouble.empty();
    }

    private Stability judge(Series record) {
        if (record.span() < criterion.needsSeconds()) {
            String reason = String.format(
                    Locale.ROOT, "record of %.0f s, the rule needs %.0f s", record.span(), criterion.needsSeconds());
            return new Stability(this, false, OptionalDouble.empty(), reason);
        }
        double moved = criterion.moved(record);
        boolean steady = criterion.steady(moved);
        String reason = String.format(
                Locale.ROOT, "%.2f %s, %s", moved, criterion.unit(), steady ? "within the rule" : "more than the rule");
        return new Stability(this, steady, OptionalDouble.of(moved), reason);
    }
}
