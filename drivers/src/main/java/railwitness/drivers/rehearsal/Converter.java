package railwitness.drivers.rehearsal;

import java.util.ArrayList;
import java.util.List;

/**
 * The quasi-static solution of a converter: the terminal voltage and the rails at which all currents balance. It knows
 * no time but the length of one step: with an endless step it finds the settled state, with a short one where the
 * capacitors have come to by its end (implicit Euler, so that long steps are safe).
 */
public final class Converter {
    private static final double ENDLESS = 1e12;
    private final Specimen specimen;
    private final Cycle cycle = new Cycle();

    public Converter(Specimen specimen) {
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
            charge = step(circuit, new Situation(feed, draws, true, ceiling), charge, step);
            step = Math.min(ENDLESS, step * 3);
        }
        return balance(circuit, new Situation(feed, draws, true, ceiling), charge);
    }

    /** Where the capacitors have come to after the step. */
    Charge step(Circuit circuit, Situation situation, Charge from, double seconds) {
        if (!situation.running()) {
            return new Solver(circuit, cycle, situation, from, seconds, false).solve(from.withDuty(0));
        }
        double fullDuty = specimen.drive().duty();
        boolean heldBefore = from.duty() < fullDuty;
        if (heldBefore && situation.ceilingVolts() < Double.POSITIVE_INFINITY) {
            Charge held = new Solver(circuit, cycle, situation, from, seconds, true).solve(from);
            if (held.converged() && held.duty() < fullDuty) {
                return held;
            }
        }
        Charge full = new Solver(circuit, cycle, situation, from, seconds, false).solve(from.withDuty(fullDuty));
        if (full.meanRail() <= situation.ceilingVolts()) {
            return full;
        }
        return new Solver(circuit, cycle, situation, from, seconds, true).solve(from.withDuty(fullDuty * 0.9));
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
        boolean limiting = situation.feed().on() && supplied >= situation.feed().limitAmps() * (1 - 1e-9);
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
        double volts = charge.railVolts()[r];
        double frequency = circuit.specimen.drive().frequencyHz();
        Ripple ripple = situation.running() && charge.duty() > 0
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
