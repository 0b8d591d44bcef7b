package railwitness.drivers.converter;

/**
 * What a load draws from one rail: a current it holds, and a conductance. A held current fades below {@link
 * #HOLDS_FROM_VOLTS}, as with every electronic load.
 *
 * @param amps constant current, A, zero or more
 * @param siemens conductance of a resistor or of a load at constant resistance, S, zero or more
 */
public record Draw(double amps, double siemens) {
    /** Rail voltage from which an electronic load can hold a current, V. */
    public static final double HOLDS_FROM_VOLTS = 1.0;

    public static final Draw NONE = new Draw(0, 0);

    public Draw {
        if (!(amps >= 0) || !(siemens >= 0)) {
            throw new IllegalArgumentException("a draw must be zero or more, not " + amps + " A, " + siemens + " S");
        }
    }

    public static Draw amps(double amps) {
        return new Draw(amps, 0);
    }

    public static Draw ohms(double ohms) {
        return new Draw(0, 1 / ohms);
    }

    /** Both at once. */
    public Draw with(Draw other) {
        return new Draw(amps + other.amps, siemens + other.siemens);
    }

    /** Current at that rail voltage (magnitude), A. */
    public double at(double railVolts) {
        double volts = Math.max(0, railVolts);
        return amps * Math.min(1, volts / HOLDS_FROM_VOLTS) + siemens * volts;
    }
}
