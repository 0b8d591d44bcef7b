package railwitness.logger.recording.sheet;

import java.util.List;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Remark;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Duty;
import railwitness.logger.recording.plan.Plan;

/** Whether anything on the sheets bounds the input current. */
final class CurrentCheck {
    private CurrentCheck() {}

    static List<Remark> of(Design design, BenchSheet bench, Plan plan) {
        boolean loads =
                design.rails().stream().anyMatch(rail -> rail.fullLoadAmperes().isPresent());
        boolean supply = bench.instruments().stream()
                .anyMatch(instrument -> instrument.duty() instanceof Duty.AsSupply made
                        && made.setting().highestAmps().isPresent());
        boolean bounded = loads
                || supply
                || plan.powerUp().isPresent()
                || design.input().highestAmperes().isPresent()
                || design.input().fuseAmperes().isPresent()
                || design.limits().inputAmperes().isPresent();
        return bounded
                ? List.of()
                : List.of(new Remark(
                        Remark.Weight.CANNOT_BE,
                        "[input]",
                        0,
                        "highest_A",
                        "nothing says how much current the unit may take: give highest_A or fuse_A, or begin the plan with"
                                + " a stage of kind power-up and its current_limit_A"));
    }
}
