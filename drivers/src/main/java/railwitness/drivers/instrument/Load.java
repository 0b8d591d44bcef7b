package railwitness.drivers.instrument;

/** An electronic load on one rail. SI units; the rail's sign is the wiring's business, all values are magnitudes. */
public interface Load extends Instrument {
    /** The rail it loads. */
    String rail();

    /** Constant current, A, nought or more. */
    void setAmps(double amps);

    /** Constant resistance, ohm, above nought. */
    void setOhms(double ohms);

    /** Reads the set point back. */
    double setting();

    void inputOn();

    void inputOff();

    boolean isOn();

    /** Ready-made bytes that switch the load's input off from any state of the line. */
    byte[] offBytes();
}
