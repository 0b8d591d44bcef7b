package railwitness.analysis.steady;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The stability test of 10 CFR 430 Subpart B Appendix Z for external supplies: after at least 30 minutes at full load
 * the input power, watched for five minutes, must not drift from the largest seen by more than 5 % (one output
 * voltage) or 1 % (several).
 *
 * @param kept whether all of it was kept; only then may a report name the regulation
 * @param drift largest less smallest input power of the last five minutes, over the largest, as a fraction
 * @param missing what was not kept, in words; empty where all was
 */
public record PowerStability(boolean kept, double drift, List<String> missing) {
    /** The name a report may print where all was kept. */
    public static final String NAME = "10 CFR 430 Subpart B Appendix Z";

    private static final double WARM_UP_SECONDS = 1800;
    private static final double WATCH_SECONDS = 300;

    /**
     * @param outputs number of output voltages, 1 or more: a pair of rails are two
     * @param warmUpSeconds time at full load before the watch began
     * @param seconds time of each reading of input power, not falling
     * @param watts input power, at least one reading
     */
    public static PowerStability of(int outputs, double warmUpSeconds, double[] seconds, double[] watts) {
        if (outputs < 1 || watts.length == 0 || seconds.length != watts.length) {
            throw new IllegalArgumentException(outputs + " outputs, " + watts.length + " powers at " + seconds.length
                    + " times: must be 1 output or more and as many times as powers");
        }
        double drift = drift(seconds, watts);
        double allowed = outputs == 1 ? 0.05 : 0.01;
        List<String> missing = new ArrayList<>();
        if (warmUpSeconds < WARM_UP_SECONDS) {
            missing.add(String.format(Locale.ROOT, "warm-up of %.0f s at full load, not 1800 s", warmUpSeconds));
        }
        double watched = seconds[seconds.length - 1] - seconds[0];
        if (watched < WATCH_SECONDS) {
            missing.add(String.format(Locale.ROOT, "input power watched for %.0f s, not 300 s", watched));
        }
        if (drift > allowed) {
            missing.add(String.format(
                    Locale.ROOT, "input power drifted by %.2f %%, not at most %.0f %%", 100 * drift, 100 * allowed));
        }
        return new PowerStability(missing.isEmpty(), drift, List.copyOf(missing));
    }

    private static double drift(double[] seconds, double[] watts) {
        double end = seconds[seconds.length - 1];
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < watts.length; i++) {
            if (seconds[i] >= end - WATCH_SECONDS) {
                least = Math.min(least, watts[i]);
                most = Math.max(most, watts[i]);
            }
        }
        return most == least ? 0 : (most - least) / Math.abs(most);
    }
}
