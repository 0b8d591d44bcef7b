package railwitness.drivers.instrument;

import java.util.OptionalDouble;

/** An electronic load on one rail. SI units; the rail's sign is the wiring's business, all values are magnitudes. */
public interface Load extends Instrument {
    /** The rail it loads. */
    String rail();

    /** Constant current, A, zero or more. */
    void setAmps(double amps);

    /** Constant resistance, ohm, above zero. */
    void setOhms(double ohms);

    /** Reads the set point back; what was sent last, where the instrument does not tell ({@link #lacks}). */
    double setting();

    /** Steps in which its current can be set, A, where the bench sheet states them: a setting may read back so far off. */
    default OptionalDouble resolutionAmps() {
        return OptionalDouble.empty();
    }

    void inputOn();

    void inputOff();

    boolean isOn();

    /** Ready-made bytes that switch the load's input off from any state of the line. */
    byte[] offBytes();
}
