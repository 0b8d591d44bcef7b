package railwitness.analysis.cause;

import java.util.Optional;
import railwitness.analysis.converter.Parts;

/**
 * A fault to be tried.
 *
 * @param code which; empty where nothing is wrong, or something that is not on the list
 * @param rail on which rail, where it is of one
 * @param place where, if it can be told
 * @param weight probability before anything is measured, relative to the others
 * @param median of its size; 0 where it has none
 * @param spread standard deviation of the logarithm of its size
 * @param fault what it does to the parts
 * @param kind in which way it works
 * @param second another fault at the same time
 */
record Candidate(
        Optional<CauseCode> code,
        Optional<String> rail,
        Optional<String> place,
        double weight,
        double median,
        double spread,
        Fault fault,
        Kind kind,
        Optional<Candidate> second) {

    /** In which way it works. */
    enum Kind {
        /** It changes parts, the same at every point. */
        OF_PARTS,
        /** Its size is a resistance before the terminals, which the parts do not see. */
        BEFORE_TERMINALS,
        /** It grows from nothing at the coolest point to its size at the warmest: a joint that moves. */
        GROWING,
        /** It is there from the begin and doubles with every 10 K: leakage of a junction. */
        DOUBLING,
        /** It is there at points with load only. */
        UNDER_LOAD,
        /** The unit stops by itself at some points; the others are as they should be. */
        STOPPING
    }

    /** What a size of a fault does to parts. */
    interface Fault {
        Parts in(Parts parts, double size);
    }

    static Candidate sound(double weight) {
        return new Candidate(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                weight,
                0,
                0,
                (parts, size) -> parts,
                Kind.OF_PARTS,
                Optional.empty());
    }

    static Candidate plain(CauseCode code, double weight, Fault fault) {
        return sized(code, weight, 0, 0, fault);
    }

    static Candidate sized(CauseCode code, double weight, double median, double spread, Fault fault) {
        return new Candidate(
                Optional.of(code),
                Optional.empty(),
                Optional.empty(),
                weight,
                median,
                spread,
                fault,
                Kind.OF_PARTS,
                Optional.empty());
    }

    Candidate on(String railName) {
        return new Candidate(code, Optional.of(railName), place, weight, median, spread, fault, kind, second);
    }

    Candidate at(String where) {
        return new Candidate(code, rail, Optional.of(where), weight, median, spread, fault, kind, second);
    }

    Candidate beforeTheTerminals() {
        return new Candidate(code, rail, place, weight, median, spread, fault, Kind.BEFORE_TERMINALS, second);
    }

    /** The same at one size. */
    Candidate fixed(double size) {
        return new Candidate(code, rail, place, weight, 0, 0, (parts, none) -> fault.in(parts, size), kind, second);
    }

    /** This one, of fixed size, and another at once, which then has the size; all is the weight of everything. */
    Candidate with(Candidate other, double all) {
        return new Candidate(
                code,
                rail,
                place,
                weight * other.weight / all,
                other.median,
                other.spread,
                (parts, size) -> other.fault.in(fault.in(parts, 0), size),
                other.kind,
                Optional.of(other));
    }

    Candidate growing() {
        return new Candidate(code, rail, place, weight, median, spread, fault, Kind.GROWING, second);
    }

    Candidate doubling() {
        return new Candidate(code, rail, place, weight, median, spread, fault, Kind.DOUBLING, second);
    }

    Candidate underLoad() {
        return new Candidate(code, rail, place, weight, median, spread, fault, Kind.UNDER_LOAD, second);
    }

    Candidate stopping() {
        return new Candidate(code, rail, place, weight, median, spread, fault, Kind.STOPPING, second);
    }

    boolean sized() {
        return median > 0;
    }

    double size(double standardDeviations) {
        return median * Math.exp(spread * standardDeviations);
    }
}
