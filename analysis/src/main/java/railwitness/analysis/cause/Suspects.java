package railwitness.analysis.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Deviation;
import railwitness.analysis.design.Input;
import railwitness.analysis.design.Transformer;

/** Every fault to be tried, with the sizes it may have. */
final class Suspects {
    /** A shorted turn is closed by copper and a joint, not by more than this. */
    private static final double POOREST_SHORT_OHMS = 2;

    private static final double GREATEST_TURN_WATTS = 2000;

    /** A weak core takes up to this many times the sheet's core loss more. */
    private static final double WEAKEST_CORE = 6;

    /** More than this is no leak but a short that the supply's limit would show. */
    private static final double GREATEST_LEAK_AMPERES = 1;

    private static final double UNKNOWN_CORE_WATTS = 2;

    private final Bench bench;
    private final Expectation expectation;
    private final boolean standbyMeasured;

    /** A leak is tried only where the current with the unit off was measured. */
    Suspects(Bench bench, Expectation expectation, boolean standbyMeasured) {
        this.standbyMeasured = standbyMeasured;
        this.bench = bench;
        this.expectation = expectation;
    }

    List<Hypothesis> all() {
        List<Hypothesis> all = new ArrayList<>();
        all.add(sized(CauseCode.SHORTED_TURN, leastTurnWatts(), GREATEST_TURN_WATTS));
        double core = bench.transformer().coreLossWatts().orElse(UNKNOWN_CORE_WATTS);
        all.add(sized(CauseCode.WEAK_CORE, 0.2 * core, WEAKEST_CORE * core));
        all.add(plain(CauseCode.WEAK_HALF, new Deviation.HalfSecondary()));
        all.add(plain(CauseCode.DEAD_DRIVE, new Deviation.HalfDrive()));
        turns(all);
        resistance(all);
        if (standbyMeasured) {
            all.add(new Hypothesis(
                    CauseCode.LEAKY_SWITCH,
                    Optional.empty(),
                    1e-4,
                    GREATEST_LEAK_AMPERES,
                    amperes -> expectation.of(Deviation.standby(amperes), 0)));
        }
        for (String rail : bench.points().rails()) {
            all.add(Hypothesis.plain(
                    CauseCode.DEAD_RECTIFIER,
                    Optional.of(rail),
                    expectation.of(Deviation.missing(new Deviation.HalfOfRail(rail)), 0)));
            all.add(new Hypothesis(
                    CauseCode.TIRED_CAPACITOR,
                    Optional.of(rail),
                    1.2,
                    100,
                    factor -> expectation.of(Deviation.tiredCapacitor(rail, factor, dried(factor)), 0)));
        }
        return all;
    }

    /** A capacitor that dried out loses capacitance as its resistance grows: a fifth is left at ten times (rough). */
    private static double dried(double factor) {
        return 1 / (1 + 4 * (factor - 1) / 9);
    }

    private Hypothesis sized(CauseCode code, double leastWatts, double mostWatts) {
        return new Hypothesis(
                code, Optional.empty(), leastWatts, mostWatts, watts -> expectation.of(Deviation.coreLoss(watts), 0));
    }

    private Hypothesis plain(CauseCode code, Deviation.Pulses pulses) {
        return Hypothesis.plain(code, Optional.empty(), expectation.of(Deviation.missing(pulses), 0));
    }

    private void turns(List<Hypothesis> all) {
        int turns = bench.transformer().secondaryTurns();
        for (int more = -4; more <= 4; more++) {
            if (more != 0 && turns + more >= 1) {
                all.add(Hypothesis.plain(
                        CauseCode.WRONG_TURNS, Optional.empty(), expectation.of(Deviation.turns(more), 0)));
            }
        }
    }

    /** Inside the unit, behind the terminals, and outside, before them. */
    private void resistance(List<Hypothesis> all) {
        Input input = bench.design().input();
        double scale = input.nominalVolts()
                / input.highestAmperes().orElse(OptionalDouble.of(30).getAsDouble());
        all.add(new Hypothesis(
                CauseCode.LEAD_RESISTANCE,
                Optional.empty(),
                0.002 * scale,
                scale,
                ohms -> expectation.of(Deviation.primaryResistance(ohms), 0)));
        all.add(new Hypothesis(
                CauseCode.LEAD_RESISTANCE,
                Optional.empty(),
                0.002 * scale,
                scale,
                ohms -> expectation.of(Deviation.none(), ohms)));
    }

    private double leastTurnWatts() {
        Transformer transformer = bench.transformer();
        double turnVolts = bench.design().input().nominalVolts() / transformer.primaryTurns();
        double on = bench.design().converter().bothDuties().orElse(1);
        return on * turnVolts * turnVolts / POOREST_SHORT_OHMS;
    }
}
