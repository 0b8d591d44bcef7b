package railwitness.analysis.verdict;

/**
 * How much of what a limit allows a value takes up, so that figures of any unit can be drawn on one axis: 0 at the ideal, 1
 * on the limit, above 1 what is not allowed. Between two limits it is the distance from their middle over half their span;
 * of an upper limit the value over it; of a lower one the limit over the value, or for a ratio that cannot pass 1, such as
 * an efficiency, what is lacking to 1 over what may lack. Limits below zero are taken by their magnitudes.
 *
 * @param ratio whether the figure cannot pass 1
 */
public record LimitShare(Limit limit, boolean ratio) {
    private static final double FAR = 10;

    /** 0 or more; at most {@value #FAR}. */
    public double of(double value) {
        double share = raw(value);
        return Double.isNaN(share) ? FAR : Math.max(0, Math.min(FAR, share));
    }

    private double raw(double value) {
        boolean least = limit.least().isPresent();
        boolean most = limit.most().isPresent();
        if (least && most) {
            double half = (limit.most().getAsDouble() - limit.least().getAsDouble()) / 2;
            return over(Math.abs(value - (limit.most().getAsDouble() - half)), half);
        }
        return most
                ? upper(value, limit.most().getAsDouble())
                : lower(value, limit.least().getAsDouble());
    }

    private double upper(double value, double most) {
        return most >= 0 ? over(value, most) : value < 0 ? most / value : FAR;
    }

    private double lower(double value, double least) {
        if (ratio && least < 1) {
            return over(1 - value, 1 - least);
        }
        if (least > 0) {
            return value > 0 ? least / value : FAR;
        }
        return over(-value, -least);
    }

    /** Nothing allowed is kept by nothing alone. */
    private static double over(double value, double allowed) {
        return allowed == 0 ? (value <= 0 ? 0 : FAR) : value / allowed;
    }
}
