package railwitness.analysis.transformer;

import railwitness.analysis.uncertainty.Estimate;

/** Turns and polarity from voltages taken while one winding is driven gently at about the working frequency. */
public final class Ratio {
    private Ratio() {}

    /** Turns of one winding over those of another: their voltages' quotient. Both V, of one kind, at the same drive. */
    public static Estimate of(Estimate volts, Estimate drivenVolts) {
        return volts.over(drivenVolts);
    }

    /** How far two halves of a centre tap differ, as a share of their mean; 0 for a good pair. */
    public static Estimate mismatch(Estimate halfA, Estimate halfB) {
        return halfA.minus(halfB).over(halfA.plus(halfB).scale(0.5));
    }

    /**
     * Turns of a winding that is closed in, counted with one turn of wire laid through the hole.
     *
     * @param volts of the winding, V
     * @param probeVolts of the one turn, V
     */
    public static Estimate turns(Estimate volts, Estimate probeVolts) {
        return volts.over(probeVolts);
    }

    /** How two windings are joined when end is tied to start. */
    public enum Polarity {
        /** Voltages add. */
        ALIKE,
        /** Voltages take each other away. */
        OPPOSED,
        /** Neither sum nor difference within the uncertainties. */
        UNCLEAR
    }

    /**
     * Polarity of two windings in series: the voltage across both is the sum where they are alike, the difference where
     * one is reversed.
     *
     * @param first magnitude across the first, V
     * @param second magnitude across the second, V
     * @param both magnitude across the series, V
     */
    public static Polarity polarity(Estimate first, Estimate second, Estimate both) {
        Estimate sum = first.plus(second);
        Estimate difference = first.minus(second).abs();
        double fromSum = far(both, sum, first.value() + second.value());
        double fromDifference = far(both, difference, first.value() + second.value());
        double least = Math.min(first.value(), second.value());
        if (!(least > 6 * Math.max(first.u(), second.u()))) {
            return Polarity.UNCLEAR;
        }
        if (fromSum <= 1 && fromDifference > 1) {
            return Polarity.ALIKE;
        }
        return fromDifference <= 1 && fromSum > 1 ? Polarity.OPPOSED : Polarity.UNCLEAR;
    }

    /** Distance over what is allowed: four standard uncertainties and 3 % of the sum for leakage and phase. */
    private static double far(Estimate measured, Estimate expected, double scale) {
        Estimate off = measured.minus(expected);
        return Math.abs(off.value()) / (4 * off.u() + 0.03 * scale);
    }
}
