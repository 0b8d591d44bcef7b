package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hipparchus.special.Erf;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.uncertainty.Estimate;

/**
 * How well each whole number of secondary turns agrees with the measured ratio, given the sheet's primary.
 *
 * @param primaryTurns of the sheet, per half, taken as true
 * @param sheetTurns secondary turns of the sheet, per half
 * @param candidates those near the ratio, best first
 */
public record ImpliedTurns(int primaryTurns, int sheetTurns, List<Candidate> candidates) {
    public ImpliedTurns {
        candidates = List.copyOf(candidates);
    }

    /** What slope and winding may differ by though all is well (commutation, rectifier): share of the ratio. */
    private static final double MODEL_SHARE = 0.004;

    /** With a larger standard uncertainty, in turns, nothing is said. */
    private static final double LARGEST_U_TURNS = 0.3;

    private static final double DOUBTFUL = 0.01;

    /**
     * One whole number.
     *
     * @param turns secondary, per half
     * @param agreement probability of a difference at least as large if this were the number, 0 to 1
     */
    public record Candidate(int turns, double agreement) {}

    /** Compares; empty where the uncertainty does not allow a word. */
    public static Optional<ImpliedTurns> of(Transformer sheet, Estimate effectiveRatio) {
        return of(sheet, sheet.secondaryTurns(), effectiveRatio);
    }

    /** @param secondaryTurns what the sheet says of the half that feeds this rail */
    public static Optional<ImpliedTurns> of(Transformer sheet, int secondaryTurns, Estimate effectiveRatio) {
        double turns = effectiveRatio.value() * sheet.primaryTurns();
        double u = Math.hypot(effectiveRatio.u() * sheet.primaryTurns(), MODEL_SHARE * turns);
        if (u > LARGEST_U_TURNS || !effectiveRatio.known()) {
            return Optional.empty();
        }
        List<Candidate> candidates = new ArrayList<>();
        int middle = (int) Math.round(turns);
        for (int whole = Math.max(1, middle - 2); whole <= middle + 2; whole++) {
            candidates.add(new Candidate(whole, Erf.erfc(Math.abs(turns - whole) / u / Math.sqrt(2))));
        }
        candidates.sort(Comparator.comparingDouble(Candidate::agreement).reversed());
        return Optional.of(new ImpliedTurns(sheet.primaryTurns(), secondaryTurns, candidates));
    }

    /** One line for the findings. */
    public String words() {
        Candidate best = candidates.get(0);
        if (best.agreement() < DOUBTFUL) {
            return String.format(
                    Locale.ROOT, "no whole number of secondary turns agrees, if the primary is %d", primaryTurns);
        }
        if (best.turns() == sheetTurns) {
            return String.format(
                    Locale.ROOT, "agrees with %d secondary turns, if the primary is %d", sheetTurns, primaryTurns);
        }
        return String.format(
                Locale.ROOT,
                "looks like %d secondary turns, not %d, if the primary is %d",
                best.turns(),
                sheetTurns,
                primaryTurns);
    }
}
