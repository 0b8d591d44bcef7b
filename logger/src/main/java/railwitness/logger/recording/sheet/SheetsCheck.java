package railwitness.logger.recording.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.DesignCheck;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Remark;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.plan.Rating;

/** Compares what sheets say, each with itself and all with each other, as far as they are there. */
public final class SheetsCheck {
    private SheetsCheck() {}

    /** All remarks on the three sheets of a session, what cannot be first. */
    public static List<SheetRemark> of(Sheets sheets) {
        return of(Optional.of(sheets.design()), Optional.of(sheets.bench()), Optional.of(sheets.plan()));
    }

    /** All remarks on the sheets that are there, what cannot be first. */
    public static List<SheetRemark> of(
            Optional<SheetText<Design>> design, Optional<SheetText<BenchSheet>> bench, Optional<SheetText<Plan>> plan) {
        List<SheetRemark> all = new ArrayList<>();
        Optional<Design> unit = design.map(SheetText::content);
        Optional<Plan> steps = plan.map(SheetText::content);
        design.ifPresent(
                sheet -> add(all, SheetKind.DESIGN, sheet, DesignCheck.of(sheet.content(), plannedVolts(unit, steps))));
        plan.ifPresent(sheet ->
                unit.ifPresent(known -> add(all, SheetKind.PLAN, sheet, PlanCheck.of(sheet.content(), known))));
        bench.ifPresent(sheet -> add(all, SheetKind.BENCH, sheet, BenchCheck.of(sheet.content(), unit, steps)));
        if (design.isPresent() && bench.isPresent() && plan.isPresent()) {
            add(
                    all,
                    SheetKind.DESIGN,
                    design.get(),
                    CurrentCheck.of(unit.get(), bench.get().content(), steps.get()));
            add(all, SheetKind.BENCH, bench.get(), ResistorCheck.of(bench.get().content(), unit.get(), steps.get()));
        }
        return all.stream()
                .sorted(Comparator.comparing(remark -> !remark.refuses()))
                .toList();
    }

    private static void add(List<SheetRemark> all, SheetKind kind, SheetText<?> sheet, List<Remark> remarks) {
        remarks.forEach(remark -> all.add(SheetRemark.of(kind, sheet, remark)));
    }

    /**
     * Refuses sheets that say what cannot be.
     *
     * @throws SheetException with each place
     */
    public static void refuse(Sheets sheets) {
        var refused = of(sheets).stream()
                .filter(SheetRemark::refuses)
                .map(SheetRemark::fault)
                .toList();
        if (!refused.isEmpty()) {
            throw new SheetException(refused);
        }
    }

    /** Full load of each rail; a rail without one is never loaded. */
    static Rating rating(Design design) {
        Map<String, Double> full = new LinkedHashMap<>();
        for (Rail rail : design.rails()) {
            full.put(rail.name(), rail.fullLoadAmperes().orElse(0));
        }
        return new Rating(design.input().nominalVolts(), full);
    }

    /** Highest input of the plan for this unit, V; 0 where one of them is not there. */
    public static double plannedVolts(Optional<Design> design, Optional<Plan> plan) {
        return design.isPresent() && plan.isPresent() ? plan.get().highestInputVolts(rating(design.get())) : 0;
    }
}
