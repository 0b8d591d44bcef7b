package railwitness.drivers.converter;

/** The air about the unit. */
@FunctionalInterface
public interface Room {
    /** Temperature so long after the begin, degC. */
    double degC(double seconds);

    /** The same all the time. */
    static Room still(double degC) {
        return seconds -> degC;
    }

    /**
     * A workshop through the day: warmer and colder by so much with the hours, and a little with doors and heating.
     *
     * @param swingKelvin half of the way from coldest to warmest, 0 or more
     */
    static Room wandering(double degC, double swingKelvin) {
        return seconds -> degC
                + swingKelvin
                        * (0.7 * Math.sin(2 * Math.PI * seconds / 86_400)
                                + 0.2 * Math.sin(2 * Math.PI * seconds / 9_000)
                                + 0.1 * Math.sin(2 * Math.PI * seconds / 1_700 + 1));
    }
}
