package railwitness.drivers.converter;

import java.util.ArrayList;
import java.util.List;

/**
 * The quasi-static solution of a converter: the terminal voltage and the rails at which all currents balance. It knows
 * no time but the length of one step: with an endless step it finds the settled state, with a short one where the
 * capacitors have come to by its end (implicit Euler, so that long steps are safe).
 */
public final class ConverterModel {
    private static final double ENDLESS = 1e12;
    private static final double SHORTEST_SECONDS = 1e-4;
    /** Shorter steps within one; beyond them what is found is taken, or one step could cost half a minute. */
    private static final int MOST_PARTS = 64;

    private final Specimen specimen;
    private final Cycle cycle = new Cycle();
    private int parts;

    public ConverterModel(Specimen specimen) {
        this.specimen = specimen;
    }

    /**
     * The settled state of the running converter.
     *
     * @param feed what stands behind the leads
     * @param draws one for each rail, in the specimen's order
     * @param transformerDegC temperature of the windings
     * @param heatsinkDegC temperature of switches and diodes
     */
    public Balance settled(Feed feed, List<Draw> draws, double transformerDegC, double heatsinkDegC) {
        Circuit circuit = new Circuit(specimen, transformerDegC, heatsinkDegC);
        Charge charge = Charge.guess(circuit, feed);
        double ceiling = specimen.drive().regulatedVolts().orElse(Double.POSITIVE_INFINITY);
        double step = 1e-3;
        for (int k = 0; k < 60; k++) {
            Charge next = step(circuit, new Situation(feed, draws, true, ceiling), charge, step);
            boolean still = step >= ENDLESS && next.distance(charge) < 1e-9;
            charge = next;
            if (still) {
                break;
            }
            step = Math.min(ENDLESS, step * 10);
        }
        return balance(circuit, new Situation(feed, draws, true, ceiling), charge);
    }

    /** Where the capacitors have come to after the step; where no balance is found, by way of shorter steps. */
    Charge step(Circuit circuit, Situation situation, Charge from, double seconds) {
        parts = 0;
        return stepInParts(circuit, situation, from, seconds);
    }

    private Charge stepInParts(Circuit circuit, Situation situation, Charge from, double seconds) {
        Charge there = oneStep(circuit, situation, from, seconds);
        if (there.converged() || seconds < SHORTEST_SECONDS || parts > MOST_PARTS) {
            return there;
        }
        parts += 8;
        double part = Math.min(seconds, 0.1) / 8;
        Charge charge = from;
        for (int k = 0; k < 8; k++) {
            charge = stepInParts(circuit, situation, charge, part);
        }
        return charge;
    }

    private Charge oneStep(Circuit circuit, Situation situation, Charge from, double seconds) {
        double fullDuty = situation.running() ? specimen.drive().duty() : 0;
        double ceiling = situation.ceilingVolts();
        boolean limited = situation.running() && ceiling < Double.POSITIVE_INFINITY;
        if (limited && from.meanRail() > ceiling) {
            Charge idle = solve(circuit, situation, from, seconds, from.withDuty(0), false);
            if (idle.meanRail() >= ceiling) {
                return idle;
            }
        }
        if (limited && from.duty() < fullDuty) {
            Charge held = solve(circuit, situation, from, seconds, from, true);
            if (held.converged() && held.duty() < fullDuty) {
                return held;
            }
        }
        Charge full = solve(circuit, situation, from, seconds, from.withDuty(fullDuty), false);
        return limited && full.meanRail() > ceiling ? held(circuit, situation, from, seconds, fullDuty) : full;
    }

    /** The duty at which the rails reach the ceiling by halving the range, for where Newton's method fails. */
    private Charge held(Circuit circuit, Situation situation, Charge from, double seconds, double fullDuty) {
        double low = 0;
        double high = fullDuty;
        Charge best = from;
        for (int k = 0; k < 18; k++) {
            double middle = (low + high) / 2;
            best = solve(circuit, situation, from, seconds, from.withDuty(middle), false);
            if (best.meanRail() > situation.ceilingVolts()) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return best;
    }

    private Charge solve(
            Circuit circuit, Situation situation, Charge from, double seconds, Charge guess, boolean held) {
        return new Solver(circuit, cycle, situation, from, seconds, held).solve(guess);
    }

    /** Everything about the unit in that state. */
    Balance balance(Circuit circuit, Situation situation, Charge charge) {
        Solver solver = new Solver(circuit, cycle, situation, charge, ENDLESS, false);
        CycleTrace trace = new CycleTrace(circuit.rails);
        cycle.trace(trace);
        solver.work(charge);
        cycle.trace(null);
        List<Balance.RailState> rails = new ArrayList<>();
        for (int r = 0; r < circuit.rails; r++) {
            rails.add(railState(circuit, situation, charge, trace, r));
        }
        double supplied = situation
                .feed()
                .amps(charge.terminalVolts(), circuit.specimen.input().leadOhm());
        Losses losses = solver.losses(charge);
        boolean limiting = situation
                .feed()
                .limiting(charge.terminalVolts(), circuit.specimen.input().leadOhm());
        return new Balance(
                situation.running(),
                charge.terminalVolts(),
                solver.inputAmps(),
                rails,
                losses,
                situation.running() ? charge.duty() : 0,
                Math.sqrt(solver.primarySquares()),
                limiting);
    }

    private static Balance.RailState railState(
            Circuit circuit, Situation situation, Charge charge, CycleTrace trace, int r) {
        Specimen.Rail rail = circuit.rail(r);
        double volts = rail.outVolts(charge.railVolts()[r]);
        double frequency = circuit.specimen.drive().frequencyHz();
        boolean held = volts < charge.railVolts()[r]; // a series regulator leaves no ripple to speak of
        Ripple ripple = situation.running() && charge.duty() > 0 && !held
                ? Ripple.of(
                        trace.sampled(r, Ripple.sampleCount()),
                        rail.capacitorFarad(),
                        rail.capacitorEsrOhm(),
                        frequency)
                : Ripple.none(frequency);
        return new Balance.RailState(
                rail.name(),
                rail.negative() ? -volts : volts,
                situation.draws().get(r).at(volts),
                ripple);
    }
}
