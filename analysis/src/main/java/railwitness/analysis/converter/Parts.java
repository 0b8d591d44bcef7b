package railwitness.analysis.converter;

import java.util.Arrays;
import java.util.List;

/** All numbers of a push-pull step-up converter. Immutable; a fault is a change of these numbers. */
public final class Parts {
    /** A resistance that stands for an open connection, ohm. */
    public static final double OPEN = 1e9;

    private static final double NEARLY_OPEN = 1e6;

    private final boolean choke;
    private final List<String> rails;
    private final boolean[] negative;
    private final double[][] numbers;

    private Parts(boolean choke, List<String> rails, boolean[] negative, double[][] numbers) {
        this.choke = choke;
        this.rails = rails;
        this.negative = negative;
        this.numbers = numbers;
    }

    /**
     * Parts that are all 0 but the halves' turns.
     *
     * @param choke whether a choke stands between rectifier and filter capacitor
     * @param rails names
     * @param negative whether each lies below ground
     */
    public static Parts blank(boolean choke, List<String> rails, boolean[] negative) {
        double[][] numbers = new double[Part.values().length][];
        for (Part part : Part.values()) {
            numbers[part.ordinal()] = new double[part.ofRail() ? rails.size() : 1];
        }
        numbers[Part.HALF_1.ordinal()][0] = 1;
        numbers[Part.HALF_2.ordinal()][0] = 1;
        return new Parts(choke, List.copyOf(rails), negative.clone(), numbers);
    }

    /** The same with one number changed; a part of rails is changed on all. */
    public Parts with(Part part, double value) {
        double[][] changed = numbers.clone();
        changed[part.ordinal()] = new double[numbers[part.ordinal()].length];
        Arrays.fill(changed[part.ordinal()], value);
        return new Parts(choke, rails, negative, changed);
    }

    /** The same with a rail's number changed. */
    public Parts with(Part part, int rail, double value) {
        double[][] changed = numbers.clone();
        changed[part.ordinal()] = numbers[part.ordinal()].clone();
        changed[part.ordinal()][rail] = value;
        return new Parts(choke, rails, negative, changed);
    }

    /** The same with a number, on all rails, times a factor. */
    public Parts times(Part part, double factor) {
        double[][] changed = numbers.clone();
        changed[part.ordinal()] = Arrays.stream(numbers[part.ordinal()])
                .map(value -> value * factor)
                .toArray();
        return new Parts(choke, rails, negative, changed);
    }

    /** The same with something added to a number, on all rails. */
    public Parts plus(Part part, double more) {
        double[][] changed = numbers.clone();
        changed[part.ordinal()] = Arrays.stream(numbers[part.ordinal()])
                .map(value -> value + more)
                .toArray();
        return new Parts(choke, rails, negative, changed);
    }

    /** A number; of a part of rails that of the first. */
    public double get(Part part) {
        return numbers[part.ordinal()][0];
    }

    /** A number of a rail; of other parts the one there is. */
    public double get(Part part, int rail) {
        double[] values = numbers[part.ordinal()];
        return values[values.length == 1 ? 0 : rail];
    }

    public List<String> rails() {
        return rails;
    }

    /** Whether a choke stands before the filter capacitor. */
    public boolean choke() {
        return choke;
    }

    /** -1 for a rail below ground, else 1. */
    public int sign(int rail) {
        return negative[rail] ? -1 : 1;
    }

    double periodSeconds() {
        return 1 / get(Part.FREQUENCY);
    }

    /** Primary side of one phase (0 or 1), ohm. */
    double sideOhms(int phase) {
        return get(Part.SWITCH_OHMS)
                + get(phase == 0 ? Part.SIDE_1_OHMS : Part.SIDE_2_OHMS)
                + get(Part.PRIMARY_OHMS)
                + get(Part.FEED_OHMS);
    }

    /** Which secondary half feeds a rail in a phase: 0 or 1; a rail below ground takes the other one. */
    private int half(int rail, int phase) {
        return negative[rail] ? 1 - phase : phase;
    }

    /** Turns ratio with which a rail is driven in a phase; 0 where nothing reaches it. */
    double ratio(int rail, int phase) {
        boolean first = half(rail, phase) == 0;
        boolean open = get(first ? Part.HALF_1_OHMS : Part.HALF_2_OHMS) > NEARLY_OPEN
                || get(first ? Part.DIODE_1_OHMS : Part.DIODE_2_OHMS, rail) > NEARLY_OPEN
                || sideOhms(phase) > NEARLY_OPEN;
        return open ? 0 : get(Part.RATIO, rail) * get(first ? Part.HALF_1 : Part.HALF_2);
    }

    /** Winding, diode and what is in series with them for a rail in a phase, ohm. */
    double windingOhms(int rail, int phase) {
        boolean first = half(rail, phase) == 0;
        return get(Part.SECONDARY_OHMS)
                + get(first ? Part.HALF_1_OHMS : Part.HALF_2_OHMS)
                + get(Part.DIODE_OHMS)
                + get(first ? Part.DIODE_1_OHMS : Part.DIODE_2_OHMS, rail);
    }

    /** A diode's drop at a current, its series resistance not counted, V (Shockley's law above 0.1 A's drop). */
    double drop(double amperes) {
        return get(Part.DIODE_VOLTS) + get(Part.DIODE_LOG_VOLTS) * Math.log(Math.max(amperes, 1e-4) / 0.1);
    }

    /** Whether both phases are alike for every rail. */
    boolean even() {
        for (int rail = 0; rail < rails.size(); rail++) {
            if (ratio(rail, 0) != ratio(rail, 1) || windingOhms(rail, 0) != windingOhms(rail, 1)) {
                return false;
            }
        }
        return sideOhms(0) == sideOhms(1);
    }
}
