package railwitness.analysis.soak;

import java.util.function.DoubleFunction;
import railwitness.analysis.uncertainty.Estimate;

/**
 * One channel over a hold.
 *
 * @param values means of the columns of the record, NaN where nothing was read
 * @param offBy an estimate of zero with what the instrument may be off by at a value
 */
public record SoakSeries(double[] values, DoubleFunction<Estimate> offBy) {
    /** A channel whose instrument is taken as exact. */
    public static SoakSeries exact(double... values) {
        return new SoakSeries(values, value -> Estimate.exact(0));
    }
}
