package railwitness.drivers.converter;

/** What stands at the supply's leads and under a meter in place of the unit, which lies aside meanwhile. */
public interface Apart {
    /** Between the supply's leads, ohm; infinite where they are on nothing. */
    double ohm(double degC);

    /** Where the meter is that is moved about: its node. */
    String node();

    /**
     * Direct voltage under that meter, V.
     *
     * @param amps through the supply's leads, A
     */
    double directVolts(double amps, double degC);

    /** Alternating voltage under that meter, root mean square, V. */
    double alternatingVolts(double degC);
}
