package railwitness.drivers.instrument;

/** A multimeter that reads one channel with one function, set up once from the bench sheet. */
public interface Meter extends Instrument {
    /**
     * Chooses the range for a value to come, in the unit the meter reads (a shunt is already taken into account).
     *
     * @param highest largest magnitude expected
     */
    void rangeFor(double highest);
}
