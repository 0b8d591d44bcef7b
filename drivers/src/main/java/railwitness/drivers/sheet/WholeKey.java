package railwitness.drivers.sheet;

/** A whole number being asked for. */
public final class WholeKey extends SheetKey<Integer> {
    WholeKey(KeyPlace place) {
        super(place, WholeKey::fits, raw -> ((Long) raw).intValue(), 1);
    }

    private static boolean fits(Object raw) {
        return raw instanceof Long whole && whole == whole.intValue();
    }

    /** Both ends included. */
    public WholeKey between(int lowest, int highest) {
        allow(value -> value >= lowest && value <= highest, Bounds.between(lowest, highest, unit()));
        return this;
    }

    public WholeKey atLeast(int lowest) {
        allow(value -> value >= lowest, Bounds.one("at least", lowest, unit()));
        return this;
    }
}
