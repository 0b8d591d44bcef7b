package railwitness.drivers.converter;

/**
 * Newton's method for one step: the unknowns are the rails, the terminal voltage and, where the control shortens the
 * pulses, the duty; the equations are that the currents at each node add up.
 */
final class Solver {
    private static final double ENOUGH_AMPS = 1e-7;
    /** Share of the ringing's start current that an unloaded rail can draw on average. */
    private static final double MEAN_SHARE = 0.133;

    private static final int MOST_ROUNDS = 40;
    private static final double NUDGE_OHM = 0.3;
    private final Circuit circuit;
    private final Cycle cycle;
    private final Situation situation;
    private final Charge from;
    private final double seconds;
    private final boolean held;
    private final int rails;
    private final int unknowns;
    private final double[] out;
    private final double[] ringAmps;
    private double standingAmps;
    private double magnetisingWatts;
    private double leakAmps;
    private double workedDuty;
    private double[] workedRails = {};
    private double drawnAmps;

    Solver(Circuit circuit, Cycle cycle, Situation situation, Charge from, double seconds, boolean held) {
        this.circuit = circuit;
        this.cycle = cycle;
        this.situation = situation;
        this.from = from;
        this.seconds = seconds;
        this.held = held;
        rails = circuit.rails;
        unknowns = rails + (held ? 2 : 1);
        out = new double[rails];
        ringAmps = new double[rails];
    }

    /** Finds the balance, starting from a guess. */
    Charge solve(Charge guess) {
        double[] x = unknownsOf(guess);
        double duty = guess.duty();
        double[] gap = gap(x, duty);
        int most = held ? MOST_ROUNDS / 3 : MOST_ROUNDS;
        for (int round = 0; round < most && norm(gap) > ENOUGH_AMPS; round++) {
            double[] better = descend(x, duty, gap);
            x = better == null ? nudged(x, gap) : better;
            gap = gap(x, duty);
        }
        return chargeOf(x, duty, norm(gap) < 1e-4);
    }

    /** Newton's step, shortened until it helps; null where it never does, at a kink. */
    private double[] descend(double[] x, double duty, double[] gap) {
        double[] move = move(x, duty, gap);
        double size = norm(gap);
        double scale = 1;
        for (int cut = 0; cut < 12; cut++, scale /= 2) {
            double[] tried = moved(x, move, scale);
            if (norm(gap(tried, duty)) < size) {
                return tried;
            }
        }
        return null;
    }

    /** Beyond a kink: each voltage goes the way its current pushes it. */
    private double[] nudged(double[] x, double[] gap) {
        double[] there = x.clone();
        for (int r = 0; r < rails; r++) {
            there[r] = Math.max(0, x[r] + NUDGE_OHM * Math.max(-5, Math.min(5, gap[r])));
        }
        double terminal = x[rails] + NUDGE_OHM / 10 * Math.max(-5, Math.min(5, gap[rails]));
        there[rails] = Math.max(0, Math.min(highestTerminal(), terminal));
        return there;
    }

    private double[] unknownsOf(Charge guess) {
        double[] x = new double[unknowns];
        System.arraycopy(guess.railVolts(), 0, x, 0, rails);
        x[rails] = guess.terminalVolts();
        if (held) {
            x[rails + 1] = guess.duty();
        }
        return x;
    }

    private Charge chargeOf(double[] x, double duty, boolean converged) {
        double[] volts = new double[rails];
        System.arraycopy(x, 0, volts, 0, rails);
        return new Charge(x[rails], volts, held ? x[rails + 1] : duty, converged);
    }

    private double[] move(double[] x, double duty, double[] gap) {
        double[][] slope = new double[unknowns][unknowns];
        double[] right = new double[unknowns];
        for (int column = 0; column < unknowns; column++) {
            double width = column < rails ? -1e-4 : column == rails ? 1e-4 : 1e-6;
            double[] nudged = x.clone();
            nudged[column] += width;
            double[] there = gap(nudged, duty);
            for (int row = 0; row < unknowns; row++) {
                slope[row][column] = (there[row] - gap[row]) / width;
            }
            right[column] = -gap[column];
        }
        Linear.solve(slope, right, unknowns);
        return right;
    }

    private double[] moved(double[] x, double[] move, double scale) {
        double[] there = x.clone();
        for (int k = 0; k < unknowns; k++) {
            double most = k < rails ? 15 : k == rails ? 5 : 0.1;
            there[k] += scale * Math.max(-most, Math.min(most, move[k]));
            there[k] = Math.max(0, there[k]);
        }
        there[rails] = Math.min(highestTerminal(), there[rails]);
        if (held) {
            there[rails + 1] = Math.min(0.495, there[rails + 1]);
        }
        return there;
    }

    private double highestTerminal() {
        return Math.max(from.terminalVolts(), situation.feed().volts());
    }

    private static double norm(double[] gap) {
        double most = 0;
        for (double value : gap) {
            most = Math.max(most, Double.isFinite(value) ? Math.abs(value) : Double.MAX_VALUE);
        }
        return most;
    }

    /** How far each node is from balance, A (and the held voltage, V). */
    private double[] gap(double[] x, double fixedDuty) {
        double[] gap = new double[unknowns];
        double duty = held ? x[rails + 1] : fixedDuty;
        double supplied = work(x[rails], x, duty);
        for (int r = 0; r < rails; r++) {
            double into = cycle.railAmps[r] + ringAmps[r] - out[r];
            gap[r] = into - circuit.rail(r).capacitorFarad() * (x[r] - from.railVolts()[r]) / seconds;
        }
        double stored = circuit.specimen.input().capacitorFarad() * (x[rails] - from.terminalVolts()) / seconds;
        gap[rails] = supplied - drawnAmps(x[rails]) - stored;
        if (held) {
            double sum = 0;
            for (int r = 0; r < rails; r++) {
                sum += x[r];
            }
            gap[rails + 1] = sum / rails - situation.ceilingVolts();
        }
        return gap;
    }

    /** Works the currents out for a state; returns what the source supplies, A. */
    double work(Charge charge) {
        return work(charge.terminalVolts(), charge.railVolts(), charge.duty());
    }

    private double work(double terminalVolts, double[] railVolts, double duty) {
        boolean pulsing = situation.running() && duty > 0;
        double supplied =
                situation.feed().amps(terminalVolts, circuit.specimen.input().leadOhm());
        standing(terminalVolts, duty);
        workedDuty = pulsing ? duty : 0;
        workedRails = railVolts;
        for (int r = 0; r < rails; r++) {
            Specimen.Rail rail = circuit.rail(r);
            out[r] = situation.draws().get(r).at(rail.outVolts(railVolts[r]))
                    + Math.max(0, railVolts[r]) * (1 / rail.bleederOhm() + 1 / rail.diodeShortOhm());
            out[r] +=
                    flaws().shortAmps(r, railVolts[r], situation.draws().get(r).at(rail.outVolts(railVolts[r])));
            ringAmps[r] = pulsing ? ringing(r, terminalVolts, railVolts[r], duty) : 0;
        }
        double pulseAmps = Math.max(0, supplied - constantAmps(terminalVolts));
        cycle.run(circuit, terminalVolts + circuit.esrInOhm * pulseAmps, railVolts, out, pulsing ? duty : 0);
        return supplied;
    }

    /** Currents that do not flow through the pulses. */
    private void standing(double volts, double duty) {
        Specimen.Drive drive = circuit.specimen.drive();
        double waking = Math.min(1, Math.max(0, volts));
        boolean running = situation.running();
        standingAmps = drive.standbyAmps() * waking;
        magnetisingWatts = 0;
        if (running) {
            standingAmps = drive.controlAmps() * waking + drive.gateWatts() / Math.max(1, volts);
            magnetisingWatts = Magnetising.watts(circuit, volts, duty);
        }
        double bothSides = leakAmps(volts, circuit.specimen.side1().offOhm())
                + leakAmps(volts, circuit.specimen.side2().offOhm());
        leakAmps = bothSides * (running ? 1 + 2 * duty : 1);
        if (running) {
            leakAmps += flaws().clampAmps(volts, duty) + circuit.runawayWatts / Math.max(1, volts);
        }
    }

    private double leakAmps(double volts, double offOhm) {
        return Math.max(0, volts) / (offOhm + circuit.primaryOhm);
    }

    private double constantAmps(double terminalVolts) {
        double ring = 0;
        for (int r = 0; r < rails; r++) {
            ring += ringAmps[r] * ringRatio(r);
        }
        return standingAmps + leakAmps + ring + magnetisingWatts / Math.max(1, terminalVolts);
    }

    /** What the converter draws at its terminals, A. */
    private double drawnAmps(double terminalVolts) {
        return constantAmps(terminalVolts)
                + cycle.primaryAmps
                + (overlapWatts(terminalVolts) + recoveryWatts()) / Math.max(1, terminalVolts);
    }

    private Flaws flaws() {
        return circuit.specimen.flaws();
    }

    private double overlapWatts(double terminalVolts) {
        return flaws().overlapWatts(
                        terminalVolts,
                        cycle.primaryAmps,
                        workedDuty,
                        circuit.specimen.drive().frequencyHz());
    }

    private double recoveryWatts() {
        double watts = 0;
        for (int r = 0; r < rails && workedDuty > 0; r++) {
            watts += flaws().recoveryWatts(
                            workedRails[r], out[r], circuit.specimen.drive().frequencyHz());
        }
        return watts;
    }

    private double ringRatio(int r) {
        double ratio = Math.max(circuit.ratio(0, r), circuit.ratio(1, r));
        return ratio * (1 + circuit.specimen.transformer().peakCharging());
    }

    /**
     * Leakage and diode capacitance ring at the start of each pulse and charge an unloaded rail to their peaks; a
     * circuit simulation shows some 2 % at no load and almost nothing at a tenth of the load.
     */
    private double ringing(int r, double terminalVolts, double railVolts, double duty) {
        Specimen.Transformer core = circuit.specimen.transformer();
        double ratio = 0;
        for (int side = 0; side < 2; side++) {
            int half = circuit.half(side, r);
            if (circuit.driven[side] && circuit.connected(half, r)) {
                ratio = Math.max(ratio, circuit.ratio(half, r));
            }
        }
        double plain = ratio * terminalVolts - circuit.idleDrop();
        if (plain <= 0 || core.peakCharging() <= 0 || circuit.chokeInput) {
            return 0;
        }
        double damping = Math.sqrt(circuit.coreSiemens / (circuit.coreSiemens + circuit.shortedTurnSiemens));
        double room = plain * (1 + core.peakCharging() * damping) - railVolts;
        double width = 0.2 * core.peakCharging() * plain;
        double share = duty / circuit.specimen.drive().duty();
        double soft = room > 30 * width ? room / width : Math.log1p(Math.exp(room / width));
        return MEAN_SHARE * core.ringAmps() * share * -Math.expm1(-soft);
    }

    double inputAmps() {
        return drawnAmps;
    }

    double primarySquares() {
        return cycle.primarySquares;
    }

    /** Where the power goes in the state last worked out. */
    Losses losses(Charge charge) {
        double volts = charge.terminalVolts();
        drawnAmps = drawnAmps(volts);
        double bleeders = 0;
        double shorted = 0;
        double regulators = 0;
        double filter = 0;
        double ring = 0;
        for (int r = 0; r < rails; r++) {
            double rail = charge.railVolts()[r];
            Specimen.Rail part = circuit.rail(r);
            bleeders += rail * rail / part.bleederOhm();
            double outVolts = part.outVolts(rail);
            shorted += rail * rail / part.diodeShortOhm()
                    + rail * flaws().shortAmps(r, rail, situation.draws().get(r).at(outVolts));
            regulators += (rail - outVolts) * situation.draws().get(r).at(outVolts);
            filter += part.capacitorEsrOhm()
                    * Math.max(0, cycle.railSquares[r] - 2 * cycle.railAmps[r] * out[r] + out[r] * out[r]);
            ring += ringAmps[r] * (ringRatio(r) * volts - rail);
        }
        double inputCapacitor =
                circuit.esrInOhm * Math.max(0, cycle.primarySquares - cycle.primaryAmps * cycle.primaryAmps);
        return new Losses(
                volts * standingAmps,
                inputCapacitor,
                cycle.switchWatts + overlapWatts(volts) * Math.max(0, volts) / Math.max(1, volts),
                circuit.primaryOhm * cycle.primarySquares,
                cycle.coreWatts,
                magnetisingWatts * volts / Math.max(1, volts),
                cycle.shortedTurnWatts,
                cycle.clampWatts + ring,
                cycle.secondaryWatts,
                cycle.diodeWatts + shorted + regulators + recoveryWatts() * Math.max(0, volts) / Math.max(1, volts),
                cycle.chokeWatts,
                filter,
                bleeders,
                volts * leakAmps);
    }
}
