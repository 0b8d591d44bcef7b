package railwitness.drivers.reading;

/**
 * One thing that may be wrong with a value, in the value's own unit.
 *
 * @param name in a technician's words: gain of plus meter
 * @param sharedAs values whose contributions carry the same text share the same unknown error, wholly correlated
 * @param effect by how much the value would be off when that error stands at plus its half-width (RECTANGULAR) or at
 *     plus one standard uncertainty (NORMAL); the sign counts between values that share it
 * @param kind how the error is thought to be distributed
 * @param relative true when the effect is the same share of every value (a gain, a shunt), false when it is the same at
 *     every value (an offset)
 */
public record InstrumentError(String name, String sharedAs, double effect, Kind kind, boolean relative) {
    /** Distributions, as GUM 4.3 names them. */
    public enum Kind {
        RECTANGULAR,
        NORMAL
    }

    public InstrumentError {
        if (!Double.isFinite(effect)) {
            throw new IllegalArgumentException(name + " " + effect + " must be finite");
        }
    }

    /** Standard uncertainty; a half-width over the root of 3 where rectangular (GUM 4.3.7). */
    public double standardUncertainty() {
        return kind == Kind.RECTANGULAR ? Math.abs(effect) / Math.sqrt(3) : Math.abs(effect);
    }
}
