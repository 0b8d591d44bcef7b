package railwitness.drivers.converter;

/**
 * What stands behind the leads: a supply that holds its voltage until its current limit, then its current.
 *
 * @param on whether its output is on; off, only its bleeder is left across it
 * @param volts voltage held, V, zero or more
 * @param limitAmps current limit, A, above zero
 */
public record Feed(boolean on, double volts, double limitAmps) {
    /** What a supply leaves across its terminals when its output is off, ohm. */
    static final double OFF_OHM = 200;

    /** Width of the crossover from voltage to current, as a share of the limit. */
    private static final double ROUNDING = 0.002;

    public Feed {
        if (!(volts >= 0) || !(limitAmps > 0)) {
            throw new IllegalArgumentException("feed must have volts of zero or more and a limit above zero, not "
                    + volts + " V, " + limitAmps + " A");
        }
    }

    /** A source that is on. */
    public static Feed of(double volts, double limitAmps) {
        return new Feed(true, volts, limitAmps);
    }

    /** Current into the unit when its terminals stand at that voltage, A. */
    public double amps(double terminalVolts, double leadOhm) {
        if (!on) {
            return -terminalVolts / OFF_OHM;
        }
        double share = (volts - terminalVolts) / leadOhm / limitAmps;
        double rounded = (1 + share - Math.sqrt((1 - share) * (1 - share) + ROUNDING * ROUNDING)) / 2;
        return Math.max(0, limitAmps * rounded);
    }

    /** Whether the source holds its current and no longer its voltage. */
    boolean limiting(double terminalVolts, double leadOhm) {
        return on && (volts - terminalVolts) / leadOhm >= limitAmps;
    }
}
