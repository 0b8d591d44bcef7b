package railwitness.analysis.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import railwitness.analysis.cause.Diagnosis;
import railwitness.analysis.design.Design;
import railwitness.analysis.expected.Deviations;
import railwitness.analysis.expected.Expectations;
import railwitness.analysis.reference.ReferenceSet.Unit;
import railwitness.analysis.reference.ReferenceSheet.Knowledge;
import railwitness.analysis.supply.OperatingPoint;

/**
 * How far the expectation lies from the circuit simulator for sound units, and which cause is named for which fault, for
 * sheets that know much or little. Arguments: half ({@code building} or {@code last-look}), and which sheets (all). The command stands in
 * {@code analysis/README.md}.
 */
public final class CauseStudy {
    private CauseStudy() {}

    public static void main(String[] arguments) {
        String half = arguments[0];
        List<Unit> units = ReferenceSet.half(half, 1e-3);
        sound(units);
        for (Knowledge known : Knowledge.values()) {
            if (arguments.length < 2 || List.of(arguments).contains(known.name())) {
                confusion(units, known);
            }
        }
    }

    /** Largest and rms error of the expectation, by filter, load and quantity, in %. */
    private static void sound(List<Unit> units) {
        Map<String, List<Double>> errors = new TreeMap<>();
        for (Unit unit : units) {
            if (!unit.code().equals("sound") || !unit.seed().equals("exact")) {
                continue;
            }
            Design design = ReferenceSet.design(unit, Knowledge.FULL);
            Expectations expectations = Expectations.of(design, unit.points());
            for (OperatingPoint point : unit.points()) {
                String where = design.converter().filter().word() + " | " + load(point) + " | ";
                var expected = expectations.at(point);
                expected.value("plus.voltage")
                        .ifPresent(value -> note(
                                errors,
                                where + "rail",
                                value.value(),
                                point.rails().get("plus").voltage().value()));
                expected.value("input.current")
                        .ifPresent(value -> note(
                                errors,
                                where + "input current",
                                value.value(),
                                point.input().current().value()));
                expected.value("loss")
                        .ifPresent(value -> note(
                                errors,
                                where + "loss",
                                value.value(),
                                point.loss().value()));
                expected.value("plus.ripple")
                        .ifPresent(value -> note(
                                errors,
                                where + "ripple",
                                value.value(),
                                point.rails()
                                        .get("plus")
                                        .rippleRms()
                                        .orElseThrow()
                                        .value()));
            }
        }
        System.out.println(
                "| filter | load | quantity | points | mean error, % | largest, % |\n|---|---|---|---|---|---|");
        errors.forEach((key, list) -> System.out.printf(
                Locale.ROOT,
                "| %s | %d | %+.2f | %.2f |%n",
                key,
                list.size(),
                list.stream().mapToDouble(Double::doubleValue).average().orElse(0),
                list.stream().mapToDouble(Math::abs).max().orElse(0)));
    }

    private static String load(OperatingPoint point) {
        return switch (point.stage()) {
            case "no-load" -> "none";
            case "cross-load" -> "unequal";
            default -> "25 to 100 %";
        };
    }

    private static void note(Map<String, List<Double>> errors, String key, double expected, double measured) {
        errors.computeIfAbsent(key, none -> new ArrayList<>()).add(100 * (expected / measured - 1));
    }

    /** One outcome. */
    record Outcome(String first, boolean right, int deviations) {
        static Outcome of(Unit unit, Knowledge known) {
            Diagnosis diagnosis = ReferenceDiagnosis.of(unit, known);
            Set<String> said = ReferenceDiagnosis.said(diagnosis);
            String wanted = ReferenceDiagnosis.wanted(unit);
            Design design = ReferenceSet.design(unit, known);
            int deviations = Deviations.of(unit.points(), Expectations.of(design, unit.points()))
                    .size();
            return new Outcome(said.iterator().next(), said.contains(wanted), deviations);
        }
    }

    private static void confusion(List<Unit> units, Knowledge known) {
        Map<String, Map<String, Integer>> rows = new LinkedHashMap<>();
        Map<String, int[]> counts = new LinkedHashMap<>();
        int faults = 0;
        int right = 0;
        Map<Unit, Outcome> outcomes = new java.util.concurrent.ConcurrentHashMap<>();
        units.parallelStream().forEach(unit -> outcomes.put(unit, Outcome.of(unit, known)));
        for (Unit unit : units) {
            Outcome outcome = outcomes.get(unit);
            rows.computeIfAbsent(unit.code(), none -> new TreeMap<>()).merge(outcome.first(), 1, Integer::sum);
            int[] count = counts.computeIfAbsent(unit.code(), none -> new int[3]);
            count[0]++;
            count[1] += outcome.right() ? 1 : 0;
            count[2] += outcome.deviations() > 0 ? 1 : 0;
            if (!unit.code().equals("sound")) {
                faults++;
                right += outcome.right() ? 1 : 0;
            }
            if (!outcome.right() || !unit.code().equals("sound") && outcome.deviations() == 0) {
                System.out.println("note: " + known + " " + unit + " first " + outcome.first() + ", deviations "
                        + outcome.deviations());
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%n%s: right first or not told apart in %d of %d faults (%.0f %%)%n",
                known,
                right,
                faults,
                100.0 * right / Math.max(1, faults));
        System.out.println("| fault | named first | recordings | right or not told apart | with deviations |");
        System.out.println("|---|---|---|---|---|");
        rows.forEach((code, firsts) -> System.out.printf(
                "| %s | %s | %d | %d | %d |%n",
                code,
                firsts.toString().replaceAll("[{}]", "").replace('=', ' '),
                counts.get(code)[0],
                counts.get(code)[1],
                counts.get(code)[2]));
    }
}
