package railwitness.analysis.reference;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.analysis.cause.Diagnosis;
import railwitness.analysis.design.Design;
import railwitness.analysis.reference.ReferenceSheet.Knowledge;
import railwitness.analysis.supply.Points;
import railwitness.analysis.supply.RippleMeans;

/** The diagnosis of a recording of the reference set. */
public final class ReferenceDiagnosis {
    private ReferenceDiagnosis() {}

    public static Diagnosis of(ReferenceSet.Unit unit, Knowledge known) {
        Design design = ReferenceSet.design(unit, known);
        Points points = new Points(unit.points(), Optional.of(design));
        return Diagnosis.of(points, design, RippleMeans.unknown(), OptionalDouble.empty());
    }

    /** The first cause and those not told apart from it. */
    public static Set<String> said(Diagnosis diagnosis) {
        Set<String> said = new LinkedHashSet<>();
        diagnosis.causes().stream().limit(1).forEach(cause -> {
            said.add(cause.code().word());
            cause.alike().forEach(code -> said.add(code.word()));
        });
        if (said.isEmpty()) {
            said.add("none");
        }
        return said;
    }

    /** What should be said; the simulator's 'poor switch' is what a dead parallel switch does. */
    public static String wanted(ReferenceSet.Unit unit) {
        return switch (unit.code()) {
            case "sound" -> "none";
            case "poor-switch" -> "dead-parallel-switch";
            default -> unit.code();
        };
    }
}
