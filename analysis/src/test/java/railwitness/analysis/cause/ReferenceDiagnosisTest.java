package railwitness.analysis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import railwitness.analysis.reference.ReferenceDiagnosis;
import railwitness.analysis.reference.ReferenceSet;
import railwitness.analysis.reference.ReferenceSheet.Knowledge;

/**
 * Recordings of the circuit simulator: sound ones accuse nobody with any sheet; faults are named first or said not to be
 * told apart. {@code analysis/README.md} has the whole table; here one recording of each kind, for the time it takes.
 */
@Execution(ExecutionMode.CONCURRENT)
class ReferenceDiagnosisTest {
    /** For the time it takes; the table has all. */
    private static final List<String> DESIGNS =
            List.of("aqueduct", "butty", "staircase", "towpath", "wharf", "windlass");

    /** Known misses, counted as such in the table: small faults that are not named. */
    private static final List<String> MISSED =
            List.of("staircase wrong-turns-at-half-2--1 78", "windlass poor-switch-0.03 72");

    @ParameterizedTest
    @EnumSource(
            value = Knowledge.class,
            names = {"FULL", "MINIMAL"})
    void soundUnitsHaveNoCause(Knowledge known) {
        for (ReferenceSet.Unit unit : units(true)) {
            assertThat(ReferenceDiagnosis.of(unit, known).causes())
                    .as(unit + " " + known)
                    .isEmpty();
        }
    }

    @Test
    void faultsAreNamedFirstOrNotToldApartWithAFullSheet() {
        for (ReferenceSet.Unit unit : units(false)) {
            if (!MISSED.contains(unit.toString())) {
                Diagnosis diagnosis = ReferenceDiagnosis.of(unit, Knowledge.FULL);
                assertThat(ReferenceDiagnosis.said(diagnosis))
                        .as(unit.toString())
                        .contains(ReferenceDiagnosis.wanted(unit));
            }
        }
    }

    @Test
    void whatIsMissedAccusesNothingElse() {
        for (ReferenceSet.Unit unit : units(false)) {
            if (MISSED.contains(unit.toString())) {
                Diagnosis diagnosis = ReferenceDiagnosis.of(unit, Knowledge.FULL);
                assertThat(ReferenceDiagnosis.said(diagnosis))
                        .as(unit.toString())
                        .containsAnyOf("none", ReferenceDiagnosis.wanted(unit));
            }
        }
    }

    @Test
    void sharesOfAllThatWasTriedAddUpToOne() {
        ReferenceSet.Unit unit = units(false).stream()
                .filter(one -> one.code().equals("shorted-turn"))
                .findFirst()
                .orElseThrow();
        Diagnosis diagnosis = ReferenceDiagnosis.of(unit, Knowledge.FULL);
        double named = diagnosis.causes().stream().mapToDouble(Cause::share).sum();
        double all = named + diagnosis.soundShare() + diagnosis.somethingElseShare();
        assertThat(all).isBetween(0.9, 1.0 + 1e-9); // those below a hundredth are not named
    }

    @Test
    void theProbeThatTellsTheFirstTwoApartComesFirst() {
        ReferenceSet.Unit unit = units(false).stream()
                .filter(one -> one.code().equals("shorted-turn"))
                .findFirst()
                .orElseThrow();
        Cause first = ReferenceDiagnosis.of(unit, Knowledge.FULL).causes().get(0);
        assertThat(first.alike()).contains(CauseCode.WEAK_CORE);
        assertThat(first.checkNext()).contains("inductance").contains("power off");
    }

    /** The building half; of the tired capacitors one size. */
    private static List<ReferenceSet.Unit> units(boolean sound) {
        return ReferenceSet.half("building", 1e-3).stream()
                .filter(unit -> DESIGNS.contains(unit.design()))
                .filter(unit -> unit.code().equals("sound") == sound)
                .filter(unit -> sound ? unit.seed().equals("exact") : oneOfThree(unit))
                .toList();
    }

    private static boolean oneOfThree(ReferenceSet.Unit unit) {
        return !unit.code().equals("tired-capacitor") || unit.fault().endsWith("-3");
    }
}
