package railwitness.analysis.converter;

/**
 * Rectifiers that charge their capacitors directly. While a switch is on, the current of each rail follows
 * {@code L di/dt = ratio (input - R i_primary - L' di_primary/dt) - drop - R i - rail}; it is integrated step by step, a
 * diode that would conduct backwards is left out. After the switch has opened the current falls against rail and input.
 * In the pause the magnetising current goes on into the rails. Where the two phases differ, the core's offset current
 * makes their volt-seconds equal (linear core).
 */
final class PeakRectifier {
    private static final int STEPS = 24;
    private static final int ROUNDS = 30;
    private static final int BALANCES = 4;
    private static final int SWEEPS = 8;
    private static final int HALVINGS = 24;
    private static final double IMPLICIT = 0.6;
    private static final double SETTLED = 2e-6;

    /** Leakage that the rails do not share, share of the leakage. */
    static final double OWN_LEAKAGE = 0.3;

    private final Parts parts;
    private final int rails;
    private final boolean even;
    private final double on;
    private final double period;

    PeakRectifier(Parts parts, double duty) {
        this.parts = parts;
        this.rails = parts.rails().size();
        this.even = parts.even();
        this.period = parts.periodSeconds();
        this.on = duty * period;
    }

    /**
     * @param drive voltage at the centre tap before the primary's resistances, V
     * @param loads of each rail, A
     * @param start where to begin, V of each rail; null for nowhere in particular
     */
    Flow at(double drive, double[] loads, double[] start) {
        double[] volts = new double[rails];
        for (int rail = 0; rail < rails; rail++) {
            volts[rail] = start != null ? start[rail] : Math.max(0.1, guess(drive, loads, rail));
        }
        State state = settled(drive, volts, 0, loads);
        if (!even) {
            state = balanced(drive, loads, state);
        }
        return flow(state.strokes(), drive, state.volts(), loads);
    }

    private record State(double[] volts, Stroke[] strokes) {}

    /**
     * With the core's offset current that makes both phases' volt-seconds equal. The side that carries more loses more, the
     * offset gives back what it loses, and it carries still more: the balance is looked for by secants.
     */
    private State balanced(double drive, double[] loads, State first) {
        State state = first;
        double before = 0;
        double missBefore = offset(state.strokes());
        double now = missBefore;
        for (int round = 0; round < BALANCES && Math.abs(missBefore) > 1e-4; round++) {
            state = settled(drive, state.volts(), now, loads);
            double miss = offset(state.strokes()) - now;
            if (Math.abs(miss) < 1e-2 * (0.01 + Math.abs(now)) || now == before) {
                break;
            }
            double slope = (miss - missBefore) / (now - before);
            double most = 2 * (Math.abs(now) + Math.abs(miss));
            double step = slope < -0.05 ? -miss / slope : 4 * miss;
            before = now;
            missBefore = miss;
            now += Math.max(-most, Math.min(most, step));
        }
        return state;
    }

    /** Rails at which as much comes as goes, for a given offset. */
    private State settled(double drive, double[] near, double offset, double[] loads) {
        double[] volts = near.clone();
        Stroke[] strokes = strokes(drive, volts, offset);
        double[] miss = miss(strokes, drive, volts, loads);
        double[][] slope = slope(drive, volts, offset, loads, miss);
        double shorten = 1;
        for (int round = 0; round < ROUNDS; round++) {
            double before = size(miss, loads);
            double[] step = Solve.of(slope, miss);
            double[] next = volts.clone();
            double largest = 0;
            for (int rail = 0; rail < rails; rail++) {
                double most = 0.1 * volts[rail] + 0.5;
                double bounded = Math.max(-most, Math.min(most, shorten * step[rail]));
                next[rail] = Math.max(0.05, volts[rail] - bounded);
                largest = Math.max(largest, Math.abs(bounded) / (1 + volts[rail]));
            }
            Stroke[] tried = strokes(drive, next, offset);
            double[] newMiss = miss(tried, drive, next, loads);
            double now = size(newMiss, loads);
            if (now > 1.5 * before && shorten > 0.1) {
                shorten /= 2;
                slope = slope(drive, volts, offset, loads, miss);
                continue;
            }
            volts = next;
            strokes = tried;
            miss = newMiss;
            if (now < 1 || largest < SETTLED) {
                break;
            }
            if (now > 0.3 * before) {
                slope = slope(drive, volts, offset, loads, miss);
            }
            shorten = Math.min(1, 2 * shorten);
        }
        if (size(miss, loads) > 30) {
            volts = bisected(drive, volts, offset, loads);
            strokes = strokes(drive, volts, offset);
        }
        return new State(volts, strokes);
    }

    /** Rail after rail by halving, where the slopes do not lead there. */
    private double[] bisected(double drive, double[] near, double offset, double[] loads) {
        double[] volts = near.clone();
        for (int sweep = 0; sweep < SWEEPS; sweep++) {
            for (int rail = 0; rail < rails; rail++) {
                double low = 0;
                double high = 1.1 * drive * Math.max(parts.ratio(rail, 0), parts.ratio(rail, 1)) + 1;
                for (int halving = 0; halving < HALVINGS; halving++) {
                    volts[rail] = (low + high) / 2;
                    if (miss(strokes(drive, volts, offset), drive, volts, loads)[rail] > 0) {
                        low = volts[rail];
                    } else {
                        high = volts[rail];
                    }
                }
            }
        }
        return volts;
    }

    /** How far the currents miss, in what counts as settled. */
    private double size(double[] miss, double[] loads) {
        double size = 0;
        for (int rail = 0; rail < rails; rail++) {
            size = Math.max(size, Math.abs(miss[rail]) / (1e-5 + 3e-5 * loads[rail]));
        }
        return size;
    }

    private double guess(double drive, double[] loads, int rail) {
        double ratio = Math.max(parts.ratio(rail, 0), parts.ratio(rail, 1));
        double sum = 0;
        for (int other = 0; other < rails; other++) {
            sum += parts.get(Part.RATIO, other) * loads[other];
        }
        double share = 2 * on / period;
        return ratio * (drive - sum / share * parts.sideOhms(0))
                - parts.drop(loads[rail])
                - loads[rail] / share * (parts.windingOhms(rail, 0) + parts.get(Part.CHOKE_OHMS, rail));
    }

    private double[][] slope(double drive, double[] volts, double offset, double[] loads, double[] miss) {
        double[][] slope = new double[rails][rails];
        if (alike(volts, loads)) {
            double step = 1e-4 * (1 + volts[0]);
            double[] near = new double[rails];
            java.util.Arrays.fill(near, volts[0] - step);
            double there = miss(strokes(drive, near, offset), drive, near, loads)[0];
            for (int rail = 0; rail < rails; rail++) {
                slope[rail][rail] = Math.min((there - miss[0]) / -step, -1e-6 - 1e-3 * (1e-3 + loads[rail]));
            }
            return slope;
        }
        for (int rail = 0; rail < rails; rail++) {
            double[] near = volts.clone();
            double step = 1e-4 * (1 + volts[rail]);
            near[rail] -= step;
            double[] there = miss(strokes(drive, near, offset), drive, near, loads);
            for (int other = 0; other < rails; other++) {
                slope[other][rail] = (there[other] - miss[other]) / -step;
            }
            double least = -1e-6 - 1e-3 * (1e-3 + loads[rail]);
            slope[rail][rail] = Math.min(slope[rail][rail], least);
        }
        return slope;
    }

    /** Whether all rails do the same, so that they move together. */
    private boolean alike(double[] volts, double[] loads) {
        boolean alike = even;
        for (int rail = 1; rail < rails; rail++) {
            alike &= loads[rail] == loads[0]
                    && volts[rail] == volts[0]
                    && parts.ratio(rail, 0) == parts.ratio(0, 0)
                    && parts.get(Part.BLEEDER_SIEMENS, rail) == parts.get(Part.BLEEDER_SIEMENS, 0);
        }
        return alike;
    }

    private double want(double[] volts, double[] loads, int rail) {
        return loads[rail] + volts[rail] * parts.get(Part.BLEEDER_SIEMENS, rail);
    }

    /** What comes less what goes, A. */
    private double[] miss(Stroke[] strokes, double drive, double[] volts, double[] loads) {
        double[] miss = new double[rails];
        for (int rail = 0; rail < rails; rail++) {
            double want = want(volts, loads, rail);
            double charge = strokes[0].charge()[rail] + strokes[1].charge()[rail];
            miss[rail] = charge / period + pause(drive, strokes, want, rail) - want;
        }
        return miss;
    }

    /** Mean of what the magnetising current gives a rail in the pauses, A. */
    private double pause(double drive, Stroke[] strokes, double want, int rail) {
        return pauseAmperes(drive, want, rail) * pauseShare();
    }

    private double pauseShare() {
        return Math.max(0, 1 - 2 * on / period);
    }

    private double pauseAmperes(double drive, double want, int rail) {
        double henries = parts.get(Part.MAGNETISING);
        if (henries <= 0) {
            return 0;
        }
        double peak = drive * on / henries / 2;
        double given = peak / parts.get(Part.RATIO, rail) / rails;
        return Math.min(given, 0.5 * want);
    }

    private Stroke[] strokes(double drive, double[] volts, double offset) {
        Stroke first = stroke(0, drive, volts, offset);
        return new Stroke[] {first, even ? first : stroke(1, drive, volts, -offset)};
    }

    /** The current in the core that makes both phases' volt-seconds equal, A at the primary. */
    private double offset(Stroke[] strokes) {
        if (even || strokes[0].primaryCharge() <= 0 && strokes[1].primaryCharge() <= 0) {
            return 0;
        }
        double first = parts.sideOhms(0) + parts.get(Part.INPUT_CAPACITOR_OHMS);
        double second = parts.sideOhms(1) + parts.get(Part.INPUT_CAPACITOR_OHMS);
        if (first > 1e6 || second > 1e6 || first + second == 0) {
            return 0;
        }
        return (first * strokes[0].primaryCharge() - second * strokes[1].primaryCharge()) / (first + second) / on;
    }

    private Stroke stroke(int phase, double drive, double[] volts, double offset) {
        double[] ratio = new double[rails];
        double[] own = new double[rails];
        double[] inductance = new double[rails];
        double leakage = parts.get(Part.LEAKAGE_PER_SQUARED_RATIO);
        double shared = (1 - OWN_LEAKAGE) * leakage / rails;
        for (int rail = 0; rail < rails; rail++) {
            ratio[rail] = parts.ratio(rail, phase);
            own[rail] = parts.windingOhms(rail, phase) + parts.get(Part.CHOKE_OHMS, rail);
            inductance[rail] = parts.get(Part.CHOKE, rail) + OWN_LEAKAGE * leakage * ratio[rail] * ratio[rail];
        }
        double side = parts.sideOhms(phase) + parts.get(Part.INPUT_CAPACITOR_OHMS);
        double dt = on / STEPS;
        double b = IMPLICIT * side + shared / dt;
        double[] now = new double[rails];
        double[] next = new double[rails];
        double[] charge = new double[rails];
        double[] squares = new double[rails];
        double[] rhs = new double[rails];
        double[] a = new double[rails];
        boolean[] off = new boolean[rails];
        double primary = 0;
        double primaryCharge = 0;
        double primarySquares = 0;
        for (int rail = 0; rail < rails; rail++) {
            a[rail] = IMPLICIT * own[rail] + inductance[rail] / dt + 1e-6;
        }
        for (int step = 0; step < STEPS; step++) {
            for (int rail = 0; rail < rails; rail++) {
                double driven =
                        ratio[rail] * (drive + side * offset - (1 - IMPLICIT) * side * primary + shared / dt * primary);
                rhs[rail] = driven
                        - parts.drop(Math.max(now[rail], 1e-3))
                        - volts[rail]
                        + (inductance[rail] / dt - (1 - IMPLICIT) * own[rail]) * now[rail];
                off[rail] = ratio[rail] == 0;
            }
            double before = primary;
            primary = advance(ratio, a, b, rhs, off, next);
            for (int rail = 0; rail < rails; rail++) {
                charge[rail] += (now[rail] + next[rail]) / 2 * dt;
                squares[rail] += (now[rail] * now[rail] + now[rail] * next[rail] + next[rail] * next[rail]) / 3 * dt;
                now[rail] = next[rail];
            }
            primaryCharge += (before + primary) / 2 * dt;
            double p = before - offset;
            double q = primary - offset;
            primarySquares += (p * p + p * q + q * q) / 3 * dt;
        }
        for (int rail = 0; rail < rails; rail++) {
            if (now[rail] > 0) {
                double henries = inductance[rail] + ratio[rail] * shared * primary / now[rail];
                double fall = henries * now[rail] / (volts[rail] + ratio[rail] * drive);
                charge[rail] += now[rail] * fall / 2;
                squares[rail] += now[rail] * now[rail] * fall / 3;
            }
        }
        return new Stroke(charge, squares, primaryCharge, primarySquares, primary, now);
    }

    /** Solves one step; diodes that would conduct backwards stay off. The primary's current comes back. */
    private double advance(double[] ratio, double[] a, double b, double[] rhs, boolean[] off, double[] next) {
        for (int attempt = 0; attempt <= rails; attempt++) {
            double up = 0;
            double down = 1;
            for (int rail = 0; rail < rails; rail++) {
                if (!off[rail]) {
                    up += ratio[rail] * rhs[rail] / a[rail];
                    down += b * ratio[rail] * ratio[rail] / a[rail];
                }
            }
            double sum = up / down;
            boolean good = true;
            for (int rail = 0; rail < rails; rail++) {
                next[rail] = off[rail] ? 0 : (rhs[rail] - b * ratio[rail] * sum) / a[rail];
                if (next[rail] < 0) {
                    off[rail] = true;
                    good = false;
                }
            }
            if (good) {
                return sum;
            }
        }
        java.util.Arrays.fill(next, 0);
        return 0;
    }

    private Flow flow(Stroke[] strokes, double drive, double[] volts, double[] loads) {
        double[] squares = new double[rails];
        double[] ripple = new double[rails];
        for (int rail = 0; rail < rails; rail++) {
            double want = want(volts, loads, rail);
            double pause = pauseAmperes(drive, want, rail);
            squares[rail] =
                    (strokes[0].squares()[rail] + strokes[1].squares()[rail]) / period + pause * pause * pauseShare();
            double alternating = Math.sqrt(Math.max(0, squares[rail] - want * want));
            ripple[rail] = alternating;
        }
        double primarySquare = (strokes[0].primarySquares() + strokes[1].primarySquares()) / period;
        double primaryMean = (strokes[0].primaryCharge() + strokes[1].primaryCharge()) / period;
        double leak = parts.get(Part.LEAKAGE_PER_SQUARED_RATIO) / rails;
        double energy = 0;
        for (Stroke stroke : strokes) {
            energy += leak * stroke.offAmperes() * stroke.offAmperes() / 2;
        }
        double sideSquares = 0;
        for (int phase = 0; phase < 2; phase++) {
            sideSquares += strokes[phase].primarySquares() / period * Math.min(parts.sideOhms(phase), Parts.OPEN / 1e6);
        }
        return new Flow(
                volts,
                squares,
                ripple,
                hertz(strokes),
                sideSquares,
                primarySquare,
                primaryMean,
                energy / period,
                squares.clone(),
                1);
    }

    /** Lowest strong frequency of each rail's ripple, Hz: twice the cycle's where both phases give about as much. */
    private double[] hertz(Stroke[] strokes) {
        double[] hertz = new double[rails];
        for (int rail = 0; rail < rails; rail++) {
            double less = Math.min(strokes[0].charge()[rail], strokes[1].charge()[rail]);
            double more = Math.max(strokes[0].charge()[rail], strokes[1].charge()[rail]);
            hertz[rail] = less > 0.7 * more ? 2 / period : 1 / period;
        }
        return hertz;
    }
}
