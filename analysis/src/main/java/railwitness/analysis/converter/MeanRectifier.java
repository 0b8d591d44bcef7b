package railwitness.analysis.converter;

/**
 * Rectifiers with a choke before the filter capacitor: the rail is the mean of the rectified pulses or, when the choke
 * runs empty at light load, more. Buck ratios in continuous and discontinuous conduction (textbook, such as Erickson and
 * Maksimovic, Fundamentals of Power Electronics, chapters 3 and 5). When a switch closes, the winding is shorted by both
 * diodes until the current has gone over to one of them through the leakage: volt-seconds of leakage times current are
 * lost in every half cycle (overlap of commutation, textbook rectifier theory). A rail that one phase does not reach sees
 * the winding's negative half and its choke runs empty at any load.
 */
final class MeanRectifier {
    private static final int ROUNDS = 60;
    private static final double SETTLED_VOLTS = 1e-7;

    private final Parts parts;
    private final int rails;
    private final double duty;
    private final double period;

    MeanRectifier(Parts parts, double duty) {
        this.parts = parts;
        this.rails = parts.rails().size();
        this.duty = duty;
        this.period = parts.periodSeconds();
    }

    /** As {@link PeakRectifier#at}. */
    Flow at(double drive, double[] loads, double[] start) {
        double[] volts = new double[rails];
        if (start != null) {
            System.arraycopy(start, 0, volts, 0, rails);
        }
        double primary = 0;
        for (int round = 0; round < ROUNDS; round++) {
            primary = 0;
            for (int rail = 0; rail < rails; rail++) {
                primary += parts.get(Part.RATIO, rail) * mean(loads, volts, rail);
            }
            double[] next = new double[rails];
            boolean done = round > 0;
            for (int rail = 0; rail < rails; rail++) {
                next[rail] = Math.max(0, rail(drive - primaryDrop(primary), primary, mean(loads, volts, rail), rail));
                done &= Math.abs(next[rail] - volts[rail]) < SETTLED_VOLTS;
            }
            volts = next;
            if (done) {
                break;
            }
        }
        return flow(drive, loads, volts, primary);
    }

    /** What the primary side loses while a switch is on, V; unequal sides share by the core's offset current. */
    private double primaryDrop(double primary) {
        double capacitor = parts.get(Part.INPUT_CAPACITOR_OHMS);
        double first = parts.sideOhms(0) + capacitor;
        double second = parts.sideOhms(1) + capacitor;
        if (first > 1e6 || second > 1e6) {
            return primary * Math.min(first, second);
        }
        return first + second > 0 ? primary * 2 * first * second / (first + second) : 0;
    }

    private double mean(double[] loads, double[] volts, int rail) {
        return loads[rail] + volts[rail] * parts.get(Part.BLEEDER_SIEMENS, rail);
    }

    private double rail(double behindPrimary, double primary, double mean, int rail) {
        double first = parts.ratio(rail, 0);
        double second = parts.ratio(rail, 1);
        if (first == 0 || second == 0) {
            return oneSided(Math.max(first, second) * behindPrimary, mean, rail);
        }
        double ohms = (parts.windingOhms(rail, 0) + parts.windingOhms(rail, 1)) / 2;
        double height = (first + second) / 2 * behindPrimary;
        double on = 2 * duty;
        double choke = parts.get(Part.CHOKE_OHMS, rail);
        double conducting = parts.drop(mean) * on + parts.drop(mean / 2) * (1 - on);
        double continuous =
                height * on - conducting - mean * (ohms * (on + (1 - on) / 2) + choke) - overlap(mean, primary, rail);
        double peak = height - parts.drop(mean) - mean * ohms;
        double empty = 2 * parts.get(Part.CHOKE, rail) / (period / 2) * mean;
        double discontinuous = peak / (1 + empty / (on * on * Math.max(peak, 1e-9))) - mean * choke;
        return parts.get(Part.CHOKE, rail) > 0 ? Math.max(continuous, discontinuous) : continuous;
    }

    /** Volts lost by the commutation's overlap: leakage times current, twice a cycle. */
    private double overlap(double mean, double primary, int rail) {
        double ratio = parts.get(Part.RATIO, rail);
        double own = PeakRectifier.OWN_LEAKAGE;
        return 2
                / period
                * parts.get(Part.LEAKAGE_PER_SQUARED_RATIO)
                * ratio
                * (own * ratio * mean + (1 - own) * primary / rails);
    }

    /** A rail that only one phase reaches. */
    private double oneSided(double height, double mean, int rail) {
        double peak = height - parts.drop(mean);
        double henries = Math.max(parts.get(Part.CHOKE, rail), 1e-7);
        double low = 0;
        double high = Math.max(peak, 1e-3);
        for (int round = 0; round < 50; round++) {
            double volts = (low + high) / 2;
            if (oneSidedMean(peak, volts, henries) > mean) {
                low = volts;
            } else {
                high = volts;
            }
        }
        return low - mean * parts.get(Part.CHOKE_OHMS, rail);
    }

    /** Mean current of pulses that rise in one phase and fall, in the pause and against the other phase. */
    private double oneSidedMean(double peak, double volts, double henries) {
        double on = duty * period;
        double pause = (0.5 - duty) * period;
        double top = Math.max(0, peak - volts) * on / henries;
        double charge = top * on / 2;
        double after = top - volts * pause / henries;
        if (after <= 0) {
            return (charge + top * top * henries / volts / 2) / period;
        }
        charge += (top + after) / 2 * pause;
        return (charge + after * after * henries / (peak + volts) / 2) / period;
    }

    private Flow flow(double drive, double[] loads, double[] volts, double primary) {
        double[] squares = new double[rails];
        double[] alternating = new double[rails];
        double[] hertz = new double[rails];
        double[] choke = new double[rails];
        double on = 2 * duty;
        double empty = 1;
        double leakPrimary = parts.get(Part.LEAKAGE_PER_SQUARED_RATIO) / rails;
        for (int rail = 0; rail < rails; rail++) {
            boolean one = parts.ratio(rail, 0) == 0 || parts.ratio(rail, 1) == 0;
            double mean = mean(loads, volts, rail);
            double swing = one ? 0 : swing(drive, volts[rail], mean, primary, rail);
            double square = one ? oneSidedSquare(drive, volts[rail], mean, rail) : swing * swing / 12;
            if (!one) {
                double critical = continuousSwing(volts[rail], mean, 0, rail) / 2;
                empty = Math.min(empty, Math.max(0, 1 - mean / Math.max(critical, 1e-9)));
            }
            if (!one && swing > 2 * mean) {
                square = Math.max(0, 2.0 / 3 * swing * mean - mean * mean); // triangles with pauses between them
            }
            alternating[rail] = Math.sqrt(square);
            choke[rail] = mean * mean + square;
            squares[rail] = choke[rail] * (on + (1 - on) / 2);
            hertz[rail] = (one ? 1 : 2) / period;
        }
        double primarySquare = primary * primary * on;
        double side = primary * primaryDrop(primary) * on - parts.get(Part.INPUT_CAPACITOR_OHMS) * primarySquare;
        double leakage = leakPrimary * primary * primary / period;
        return new Flow(
                volts,
                squares,
                alternating,
                hertz,
                Math.max(0, side),
                primarySquare,
                primary * on,
                leakage,
                choke,
                empty);
    }

    /** Peak to peak of the choke's current, A; 0 where the choke is not known. */
    private double swing(double drive, double volts, double mean, double primary, int rail) {
        double henries = parts.get(Part.CHOKE, rail);
        if (henries <= 0) {
            return 0;
        }
        double height = parts.get(Part.RATIO, rail) * drive;
        double lost = Math.min(0.5, overlap(mean, primary, rail) / Math.max(height, 1e-9));
        double continuous = continuousSwing(volts, mean, lost, rail);
        double discontinuous = Math.max(0, height - parts.drop(mean) - volts) * duty * period / henries;
        return continuous <= 2 * mean ? continuous : Math.max(2 * mean, Math.min(continuous, discontinuous));
    }

    private double continuousSwing(double volts, double mean, double lost, int rail) {
        double henries = parts.get(Part.CHOKE, rail);
        return henries <= 0 ? 0 : (volts + parts.drop(mean / 2)) * (1 - 2 * duty + lost) * period / 2 / henries;
    }

    private double oneSidedSquare(double drive, double volts, double mean, int rail) {
        double henries = Math.max(parts.get(Part.CHOKE, rail), 1e-7);
        double peak = parts.get(Part.RATIO, rail) * drive - parts.drop(mean);
        double top = Math.max(0, peak - volts) * duty * period / henries;
        return Math.max(0, 2.0 / 3 * top * mean - mean * mean);
    }
}
