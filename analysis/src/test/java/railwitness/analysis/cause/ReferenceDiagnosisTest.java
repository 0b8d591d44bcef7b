package railwitness.analysis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import railwitness.analysis.reference.ReferenceDiagnosis;
import railwitness.analysis.reference.ReferenceSet;
import railwitness.analysis.reference.ReferenceSheet.Knowledge;

/** Recordings of the circuit simulator: sound ones accuse nobody, faults are named first or said not to be told apart. */
class ReferenceDiagnosisTest {

    @ParameterizedTest
    @EnumSource(Knowledge.class)
    void soundUnitsHaveNoCauseWithAnySheet(Knowledge known) {
        for (ReferenceSet.Unit unit : units(true)) {
            assertThat(ReferenceDiagnosis.of(unit, known).causes())
                    .as(unit + " " + known)
                    .isEmpty();
        }
    }

    static Stream<ReferenceSet.Unit> faulty() {
        return units(false).stream();
    }

    @ParameterizedTest
    @MethodSource("faulty")
    void faultIsNamedFirstOrNotToldApartWithAFullSheet(ReferenceSet.Unit unit) {
        Diagnosis diagnosis = ReferenceDiagnosis.of(unit, Knowledge.FULL);
        assertThat(diagnosis.causes()).as(unit.toString()).isNotEmpty();
        assertThat(ReferenceDiagnosis.said(diagnosis)).as(unit.toString()).contains(ReferenceDiagnosis.wanted(unit));
    }

    /** The building half, one seed of each fault. */
    private static List<ReferenceSet.Unit> units(boolean sound) {
        return ReferenceSet.half("building", 1e-3).stream()
                .filter(unit -> unit.code().equals("sound") == sound)
                .filter(unit -> sound
                        || !unit.fault().startsWith("tired")
                        || unit.fault().contains("3"))
                .toList();
    }
}
