package railwitness.analysis.supply;

/**
 * Wave shapes of ripple with their factors (elementary integrals, as tabled in meter makers' manuals). Between rms and
 * peak to peak one may only go by a stated shape; {@link #SINE} and {@link #SQUARE} are the ends of what ripple without
 * spikes may be.
 */
public enum WaveShape {
    SINE(Math.sqrt(2), Math.PI / (2 * Math.sqrt(2))),
    TRIANGLE(Math.sqrt(3), 2 / Math.sqrt(3)),
    SAW_TOOTH(Math.sqrt(3), 2 / Math.sqrt(3)),
    SQUARE(1, 1);

    private final double crestFactor;
    private final double formFactor;

    WaveShape(double crestFactor, double formFactor) {
        this.crestFactor = crestFactor;
        this.formFactor = formFactor;
    }

    /** Peak over rms. */
    public double crestFactor() {
        return crestFactor;
    }

    /** Rms over the mean of the magnitude. */
    public double formFactor() {
        return formFactor;
    }

    /** Peak to peak of this shape, V, from its rms, V. */
    public double peakToPeakVolts(double rmsVolts) {
        return 2 * crestFactor * rmsVolts;
    }

    /** Relative error of a meter that responds to the mean and is scaled for a sine; 0.11 reads 11 % too high. */
    public double averageRespondingError() {
        return SINE.formFactor / formFactor - 1;
    }
}
