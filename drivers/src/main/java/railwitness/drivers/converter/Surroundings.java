package railwitness.drivers.converter;

/**
 * Where a unit runs and what running does to it.
 *
 * @param room the air
 * @param wear what changes in the unit with time and heat
 */
public record Surroundings(Room room, Wear wear) {
    /** A still room in which nothing wears. */
    public static Surroundings still(double degC) {
        return new Surroundings(Room.still(degC), Wear.NONE);
    }

    boolean wears() {
        return wear != Wear.NONE;
    }
}
