package railwitness.drivers.converter;

import java.util.Arrays;

/**
 * One full cycle of the transformer, worked out from the loop equations: while a side conducts, each rail's current
 * follows L di/dt = n v - drop - R i - V with v the voltage of the primary half, which falls with the current of all
 * rails together (this is the rounded ramp i = I0 (1 - exp(-t / tau))); after turn-off it falls straight. The steps are
 * implicit midpoint, so that energy is kept exactly.
 *
 * <p>An instance is reused; after {@link #run} its fields hold means over the cycle.
 */
final class Cycle {
    private static final int STEPS = 14;
    /** Room above the rail from which on the ringing starts a pulse fully, V. */
    private static final double KICK_VOLTS = 0.3;

    private Circuit circuit;
    private int rails;
    /** Mean rectified current of each rail, A. */
    double[] railAmps = {};
    /** Mean of the squared rectified current, A^2. */
    double[] railSquares = {};
    /** Mean of the primary current that flows during pulses, A. */
    double primaryAmps;

    double primarySquares;
    double switchWatts;
    double coreWatts;
    double shortedTurnWatts;
    double secondaryWatts;
    double diodeWatts;
    double chokeWatts;
    double clampWatts;

    private double[] amps = {};
    private double[] steps = {};
    private double[] right = {};
    private double[][] matrix = {};
    private boolean[] active = {};
    private CycleTrace trace;
    private double atSeconds;

    /** Notes every corner of the currents in the next run; null to stop. */
    void trace(CycleTrace into) {
        trace = into;
    }

    /**
     * Works the periodic cycle out.
     *
     * @param at the circuit at its temperatures
     * @param sourceVolts terminal voltage plus what the input capacitor's resistance adds, V
     * @param railVolts magnitudes of the filter capacitors' voltages
     * @param outAmps what leaves each rail
     * @param duty share of the cycle of one side, 0 to 0.495
     */
    void run(Circuit at, double sourceVolts, double[] railVolts, double[] outAmps, double duty) {
        prepare(at);
        CycleTrace wanted = trace;
        trace = null;
        double[] start = new double[rails];
        double[] end = pass(sourceVolts, railVolts, outAmps, duty, start);
        for (int round = 0; round < 3 && !closes(start, end); round++) {
            start = periodic(sourceVolts, railVolts, outAmps, duty, start, end);
            end = pass(sourceVolts, railVolts, outAmps, duty, start);
        }
        if (wanted != null) {
            trace = wanted;
            pass(sourceVolts, railVolts, outAmps, duty, start);
        }
    }

    private void prepare(Circuit at) {
        circuit = at;
        if (rails != at.rails) {
            rails = at.rails;
            railAmps = new double[rails];
            railSquares = new double[rails];
            amps = new double[rails];
            steps = new double[rails];
            right = new double[rails];
            matrix = new double[rails][rails];
            active = new boolean[rails];
        }
    }

    private static boolean closes(double[] start, double[] end) {
        double apart = 0;
        for (int r = 0; r < start.length; r++) {
            apart = Math.max(apart, Math.abs(start[r] - end[r]));
        }
        return apart < 1e-7;
    }

    /** Newton's step towards the start from which the cycle closes: the map start to end is nearly a straight line. */
    private double[] periodic(
            double sourceVolts, double[] railVolts, double[] outAmps, double duty, double[] start, double[] end) {
        double[][] slope = new double[rails][rails];
        double[] gap = new double[rails];
        for (int q = 0; q < rails; q++) {
            double[] moved = start.clone();
            double width = Math.max(1e-3, 1e-3 * start[q]);
            moved[q] += width;
            double[] there = pass(sourceVolts, railVolts, outAmps, duty, moved);
            for (int r = 0; r < rails; r++) {
                slope[r][q] = (r == q ? 1 : 0) - (there[r] - end[r]) / width;
            }
            gap[q] = end[q] - start[q];
        }
        Linear.solve(slope, gap, rails);
        double[] next = new double[rails];
        for (int r = 0; r < rails; r++) {
            next[r] = Math.max(0, start[r] + gap[r]);
        }
        return next;
    }

    private double[] pass(double sourceVolts, double[] railVolts, double[] outAmps, double duty, double[] start) {
        clear();
        System.arraycopy(start, 0, amps, 0, rails);
        for (int side = 0; side < 2; side++) {
            double off = (0.5 - duty) * circuit.periodSeconds;
            if (circuit.driven[side] && duty > 0) {
                pulse(side, sourceVolts, railVolts, outAmps, duty * circuit.periodSeconds);
            } else {
                off += duty * circuit.periodSeconds;
            }
            fall(side, sourceVolts, railVolts, outAmps, off);
        }
        return amps.clone();
    }

    private void clear() {
        Arrays.fill(railAmps, 0);
        Arrays.fill(railSquares, 0);
        primaryAmps = primarySquares = switchWatts = coreWatts = shortedTurnWatts = 0;
        secondaryWatts = diodeWatts = chokeWatts = clampWatts = 0;
        atSeconds = 0;
    }

    private void pulse(int side, double sourceVolts, double[] railVolts, double[] outAmps, double onSeconds) {
        double pathOhm = circuit.switchOhm[side] + circuit.primaryOhm + circuit.esrInOhm;
        double siemens = circuit.coreSiemens + circuit.shortedTurnSiemens;
        double divider = 1 + siemens * pathOhm;
        double step = onSeconds / STEPS;
        double before = circuit.chokeInput ? circuit.chokeJoule(amps) : circuit.storedJoule(side, amps);
        kick(side, sourceVolts, railVolts);
        clampWatts -= (circuit.storedJoule(side, amps) - before) / circuit.periodSeconds;
        for (int k = 0; k < STEPS; k++) {
            advance(side, sourceVolts / divider, pathOhm / divider, railVolts, outAmps, step);
            addPulse(side, sourceVolts, pathOhm, siemens, divider, step);
            for (int r = 0; r < rails; r++) {
                amps[r] += steps[r];
            }
            note(step);
        }
    }

    /** The ringing of leakage and diode capacitance gives each current a start, at the expense of the clamp. */
    private void kick(int side, double sourceVolts, double[] railVolts) {
        double ring = circuit.chokeInput ? 0 : circuit.specimen.transformer().ringAmps();
        for (int r = 0; r < rails; r++) {
            int half = circuit.half(side, r);
            double room = circuit.ratio(half, r) * sourceVolts - circuit.idleDrop() - railVolts[r];
            if (room > 0 && circuit.connected(half, r)) {
                amps[r] = Math.max(amps[r], ring * -Math.expm1(-room / KICK_VOLTS));
            }
        }
    }

    /** Fills {@link #steps} with the change of each current in one step. */
    private void advance(
            int side, double openVolts, double sharedOhm, double[] railVolts, double[] outAmps, double step) {
        for (int r = 0; r < rails; r++) {
            double esr = circuit.esrOhm[r];
            right[r] = circuit.reflect[side][r] * openVolts - circuit.drop(amps[r]) - railVolts[r] + esr * outAmps[r];
            for (int q = 0; q < rails; q++) {
                right[r] -= ohm(side, r, q, sharedOhm) * amps[q];
            }
            active[r] = amps[r] > 0 || right[r] > 0;
        }
        boolean again = true;
        for (int round = 0; again && round <= rails; round++) {
            solveStep(side, sharedOhm, step);
            again = stopReversed();
        }
    }

    private double ohm(int side, int r, int q, double sharedOhm) {
        return circuit.ohm[side][r][q] + circuit.reflect[side][r] * circuit.reflect[side][q] * sharedOhm;
    }

    private void solveStep(int side, double sharedOhm, double step) {
        for (int r = 0; r < rails; r++) {
            for (int q = 0; q < rails; q++) {
                matrix[r][q] = active[r]
                        ? circuit.henry[side][r][q] / step + ohm(side, r, q, sharedOhm) / 2
                        : (r == q ? 1 : 0);
            }
            steps[r] = active[r] ? right[r] : -amps[r];
        }
        Linear.solve(matrix, steps, rails);
    }

    private boolean stopReversed() {
        boolean any = false;
        for (int r = 0; r < rails; r++) {
            if (active[r] && amps[r] + steps[r] < 0) {
                active[r] = false;
                any = true;
            }
        }
        return any;
    }

    private void addPulse(int side, double sourceVolts, double pathOhm, double siemens, double divider, double step) {
        double share = step / circuit.periodSeconds;
        double reflected = 0;
        for (int r = 0; r < rails; r++) {
            double middle = amps[r] + steps[r] / 2;
            reflected += circuit.reflect[side][r] * middle;
            railAmps[r] += middle * share;
            railSquares[r] += middle * middle * share;
            addOwn(side, r, circuit.drop(amps[r]) * middle, middle * middle, share);
            for (int q = 0; q < rails; q++) {
                if (circuit.half(side, q) == circuit.half(side, r)) {
                    double other = amps[q] + steps[q] / 2;
                    secondaryWatts += circuit.secondaryOhm[circuit.half(side, r)] * middle * other * share;
                }
            }
        }
        double primary = (reflected + siemens * sourceVolts) / divider;
        double windingVolts = sourceVolts - pathOhm * primary;
        primaryAmps += primary * share;
        primarySquares += primary * primary * share;
        switchWatts += circuit.switchOhm[side] * primary * primary * share;
        coreWatts += circuit.coreSiemens * windingVolts * windingVolts * share;
        shortedTurnWatts += circuit.shortedTurnSiemens * windingVolts * windingVolts * share;
    }

    /** Diode and choke of one rail: drop times charge, and resistance times mean square. */
    private void addOwn(int side, int r, double dropWatts, double square, double share) {
        double extra = circuit.diodeExtraOhm(circuit.half(side, r), r);
        diodeWatts += (dropWatts + (circuit.diodeOhm + extra) * square) * share;
        chokeWatts += circuit.rail(r).chokeOhm() * square * share;
    }

    /**
     * The switch is off: with a capacitor-input filter the leakage drives its current against the reversed winding,
     * and what it gives back is lost in the clamp; with a choke it runs on through both halves.
     */
    private void fall(int side, double sourceVolts, double[] railVolts, double[] outAmps, double offSeconds) {
        double before = circuit.storedJoule(side, amps);
        if (before <= 0) {
            note(offSeconds);
            return;
        }
        double delivered = 0;
        double[] henry = new double[rails];
        for (int r = 0; r < rails; r++) {
            henry[r] = fallHenry(side, r);
        }
        if (trace != null) {
            noteFall(side, sourceVolts, railVolts, outAmps, henry, offSeconds);
        }
        for (int r = 0; r < rails; r++) {
            delivered += fallOne(side, r, sourceVolts, railVolts[r], outAmps[r], henry[r], offSeconds);
        }
        double after = circuit.chokeInput ? circuit.chokeJoule(amps) : circuit.storedJoule(side, amps);
        clampWatts += (before - after - delivered) / circuit.periodSeconds;
        if (trace == null) {
            atSeconds += offSeconds;
        }
    }

    private double fallHenry(int side, int r) {
        if (circuit.chokeInput) {
            return circuit.chokeHenry[r];
        }
        double sum = 0;
        for (int q = 0; q < rails; q++) {
            sum += circuit.henry[side][r][q] * amps[q];
        }
        return amps[r] > 0 ? sum / amps[r] : 1;
    }

    /**
     * Time in which one rail's current would fall to zero, s. The resistance's part of the voltage is that of a
     * straight line from the first to the last current, so that the energy comes out right.
     */
    private double fallSeconds(
            int side, int r, double sourceVolts, double railVolts, double outAmps, double henry, double off) {
        int half = circuit.half(side, r);
        double back = circuit.chokeInput ? 0 : circuit.ratio(half, r) * sourceVolts;
        double ohm = circuit.ownOhm(half, r) + circuit.secondaryOhm[half];
        double first = amps[r];
        double plain = railVolts - circuit.esrOhm[r] * outAmps + circuit.drop(first) + back;
        double whole = henry * first / Math.max(1e-3, plain + ohm * first * 2 / 3);
        for (int round = 0; whole > off && round < 3; round++) {
            double last = first * (1 - off / whole);
            double effective = (first * first + first * last + last * last) / 3 / ((first + last) / 2);
            whole = henry * first / Math.max(1e-3, plain + ohm * effective);
        }
        return whole;
    }

    /** One rail's straight fall; returns the energy that went into rail and resistances, J. */
    private double fallOne(
            int side, int r, double sourceVolts, double railVolts, double outAmps, double henry, double off) {
        double first = amps[r];
        if (first <= 0) {
            return 0;
        }
        double whole = fallSeconds(side, r, sourceVolts, railVolts, outAmps, henry, off);
        double time = Math.min(whole, off);
        double last = first * (1 - time / whole);
        double charge = (first + last) / 2 * time;
        double square = (first * first + first * last + last * last) / 3 * time;
        double dropVolts = circuit.drop(first);
        double period = circuit.periodSeconds;
        int half = circuit.half(side, r);
        railAmps[r] += charge / period;
        railSquares[r] += square / period;
        addOwn(side, r, dropVolts * charge / square, 1, square / period);
        secondaryWatts += circuit.secondaryOhm[half] * square / period;
        amps[r] = last;
        double esr = circuit.esrOhm[r];
        return (railVolts - esr * outAmps + dropVolts) * charge
                + (circuit.ownOhm(half, r) + circuit.secondaryOhm[half]) * square;
    }

    private void note(double seconds) {
        atSeconds += seconds;
        if (trace != null) {
            trace.add(atSeconds, amps);
        }
    }

    /** Notes the corners of the falls in their order, and the end of the off time. */
    private void noteFall(
            int side, double sourceVolts, double[] railVolts, double[] outAmps, double[] henry, double off) {
        double[] whole = new double[rails];
        for (int r = 0; r < rails; r++) {
            whole[r] = amps[r] <= 0 ? 0 : fallSeconds(side, r, sourceVolts, railVolts[r], outAmps[r], henry[r], off);
        }
        double[] corners = Arrays.copyOf(whole, rails + 1);
        corners[rails] = off;
        Arrays.sort(corners);
        double[] now = new double[rails];
        for (double corner : corners) {
            if (corner > 0 && corner <= off) {
                for (int r = 0; r < rails; r++) {
                    now[r] = whole[r] <= corner ? 0 : amps[r] * (1 - corner / whole[r]);
                }
                trace.add(atSeconds + corner, now);
            }
        }
        atSeconds += off;
    }
}
