package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * What is wrong with a wound transformer, from its figures against its design. A figure accuses only where it is off by
 * more than sound ones spread and by three of its own standard uncertainties beyond that.
 */
public final class WindingDiagnosis {
    private static final double SURE = 3;
    private static final double HALF_A_TURN = 0.5;
    private static final double SPREAD_OF_LOSS = 1.8;
    private static final double SHORTED_LOSS = 4;

    /** Of the current of an open winding this share in phase is a closed turn's, not a core's (common practice, no source). */
    private static final double CLOSED_TURN = 0.8;

    /** A shorted turn leaves little more than the leakage (common practice, no source). */
    private static final double SHORTED_INDUCTANCE = 0.28;

    /** No gap or core leaves so little of the inductance (common practice, no source). */
    private static final double LEAKAGE_ALONE = 0.03;

    private static final double LEAST_INDUCTANCE = 0.7;
    private static final double SPREAD_OF_KNEE = 0.85;
    private static final double SPREAD_OF_OHMS = 1.2;
    private static final double UNEQUAL_OHMS = 0.06;

    private final WoundAsMeant meant;
    private final WoundFigures found;
    private final List<Suspicion> all = new ArrayList<>();

    /**
     * One thing that may be wrong.
     *
     * @param fault what
     * @param where winding or half; empty where it is of the whole
     * @param reason the figure that says so
     */
    public record Suspicion(WindingFault fault, String where, String reason) {}

    private WindingDiagnosis(WoundAsMeant meant, WoundFigures found) {
        this.meant = meant;
        this.found = found;
    }

    /** All that is wrong, the gravest first; empty where nothing is. */
    public static List<Suspicion> of(WoundAsMeant meant, WoundFigures found) {
        WindingDiagnosis diagnosis = new WindingDiagnosis(meant, found);
        diagnosis.polarity("primary", found.primary());
        diagnosis.polarity("secondary", found.secondary());
        boolean closed = diagnosis.closed();
        if (!closed) {
            diagnosis.turns();
        }
        boolean turnsOff = !diagnosis.all.isEmpty();
        if (!closed) {
            diagnosis.core();
        }
        both(found.primaryA(), found.primaryB())
                .ifPresent(two -> diagnosis.ohms("primary", two.get(0), two.get(1), meant.primaryOhms(), turnsOff));
        both(found.secondaryA(), found.secondaryB())
                .ifPresent(two -> diagnosis.ohms("secondary", two.get(0), two.get(1), meant.secondaryOhms(), turnsOff));
        return diagnosis.all;
    }

    private void polarity(String winding, Ratio.Polarity polarity) {
        if (polarity == Ratio.Polarity.OPPOSED) {
            suspect(WindingFault.REVERSED_HALF, winding, "its halves in series take each other's voltage away");
        }
    }

    private void turns() {
        Optional<Estimate> apart = both(found.ratioA(), found.ratioB())
                .map(two -> two.get(0).minus(two.get(1)).scale(meant.primaryTurns()));
        Optional<Estimate> primary =
                found.primaries().map(ratio -> ratio.plus(-1).scale(meant.primaryTurns()));
        if (primary.filter(WindingDiagnosis::off).isPresent()) {
            suspect(
                    WindingFault.MISMATCHED_HALVES,
                    "primary",
                    words("half B has %.2f turns more than A", primary.get()));
        } else if (apart.filter(WindingDiagnosis::off).isPresent()) {
            suspect(
                    WindingFault.MISMATCHED_HALVES,
                    "secondary",
                    words("half A has %.2f turns more than B", apart.get()));
        } else {
            both(found.ratioA(), found.ratioB())
                    .map(two -> two.get(0).plus(two.get(1)).scale(meant.primaryTurns() / 2.0))
                    .ifPresent(this::wrong);
        }
    }

    private static Optional<List<Estimate>> both(Optional<Estimate> one, Optional<Estimate> other) {
        return one.flatMap(first -> other.map(second -> List.of(first, second)));
    }

    private void wrong(Estimate turns) {
        if (!off(turns.plus(-meant.secondaryTurns()))) {
            return;
        }
        double whole = Math.rint(turns.value());
        boolean secondary = Math.abs(turns.value() - whole) < Math.max(SURE * turns.u(), 0.02 * whole);
        double primary = (double) meant.primaryTurns() * meant.secondaryTurns() / turns.value();
        suspect(
                WindingFault.WRONG_TURNS,
                secondary ? "secondary" : "primary",
                String.format(
                        Locale.ROOT,
                        "the ratio is that of %d : %d turns, not %d : %d",
                        secondary ? meant.primaryTurns() : Math.round(primary),
                        secondary ? Math.round(whole) : meant.secondaryTurns(),
                        meant.primaryTurns(),
                        meant.secondaryTurns()));
    }

    /** More than half a turn, and surely so; a smaller difference is leakage or the meters'. */
    private static boolean off(Estimate turns) {
        return Math.abs(turns.value()) > HALF_A_TURN && Math.abs(turns.value()) > SURE * turns.u();
    }

    /** A closed turn drags the other voltages down too, so that they say nothing of turns and core. */
    private boolean closed() {
        boolean inPhase =
                found.inPhase().filter(share -> above(share, CLOSED_TURN)).isPresent();
        boolean nothingLeft = found.inductance()
                .filter(henries -> below(henries, LEAKAGE_ALONE * meant.henries()))
                .isPresent();
        if (inPhase || nothingLeft) {
            suspect(
                    WindingFault.SHORTED_TURN,
                    "",
                    inPhase
                            ? "with all windings open the current is in phase with the voltage: something is closed"
                            : "with all windings open hardly more than the leakage is left: something is closed");
        }
        return inPhase || nothingLeft;
    }

    private void core() {
        boolean lossy = above(found.coreWatts().orElse(Estimate.exact(0)), SPREAD_OF_LOSS * meant.coreWatts());
        boolean soft = found.inductance()
                .filter(henries -> below(henries, LEAST_INDUCTANCE * meant.henries()))
                .isPresent();
        boolean early = found.kneeVolts()
                .filter(volts -> below(volts, SPREAD_OF_KNEE * meant.kneeVolts()))
                .isPresent();
        boolean gone = found.inductance()
                .filter(henries -> below(henries, SHORTED_INDUCTANCE * meant.henries()))
                .isPresent();
        boolean untold = found.inPhase().isEmpty();
        if (untold && gone && above(found.coreWatts().orElse(Estimate.exact(0)), SHORTED_LOSS * meant.coreWatts())) {
            suspect(WindingFault.SHORTED_TURN, "", "inductance far too low and the idle loss far too high");
        } else if (lossy || early) {
            suspect(WindingFault.WEAK_CORE, "", lossy ? "the core loses too much" : "it saturates too early");
        } else if (soft) {
            suspect(WindingFault.GAP, "", "inductance too low while " + rest());
        }
    }

    private String rest() {
        return found.coreWatts().isPresent() ? "the loss is as it should be" : "the loss was not measured";
    }

    private void ohms(String winding, Estimate a, Estimate b, double meantOhms, boolean turnsOff) {
        Estimate apart = Ratio.mismatch(a, b);
        double allowed = turnsOff ? UNEQUAL_OHMS + 1.0 / meant.primaryTurns() : UNEQUAL_OHMS;
        if (Math.abs(apart.value()) - SURE * apart.u() > allowed) {
            suspect(
                    WindingFault.POOR_JOINT,
                    winding + (apart.value() > 0 ? " half A" : " half B"),
                    String.format(Locale.ROOT, "%.0f %% more resistance than its twin", 100 * Math.abs(apart.value())));
        } else if (!turnsOff && above(a.plus(b).scale(0.5), SPREAD_OF_OHMS * meantOhms)) {
            suspect(WindingFault.THIN_WIRE, winding, "both halves have too much resistance");
        }
    }

    private static boolean above(Estimate figure, double limit) {
        return figure.value() - SURE * figure.u() > limit;
    }

    private static boolean below(Estimate figure, double limit) {
        return figure.value() + SURE * figure.u() < limit;
    }

    private static String words(String form, Estimate value) {
        return String.format(Locale.ROOT, form, value.value());
    }

    private void suspect(WindingFault fault, String where, String reason) {
        all.add(new Suspicion(fault, where, reason));
    }
}
