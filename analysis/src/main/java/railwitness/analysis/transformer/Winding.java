package railwitness.analysis.transformer;

/**
 * A centre-tapped winding: two equal halves.
 *
 * @param turns of one half, 1 or more
 * @param wire of it
 */
public record Winding(int turns, Wire wire) {
    public Winding {
        if (turns < 1) {
            throw new IllegalArgumentException("turns " + turns + " of a half must be a whole number, at least 1");
        }
    }

    /** Room both halves take in the core's hole, m^2. */
    double windowSquareMetres() {
        return 2 * turns * wire.windowSquareMetres();
    }
}
