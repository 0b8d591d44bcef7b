package railwitness.analysis.design;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether start, fuse and highest current fit each other and what the unit needs. */
final class InputCheck {
    private static final String INPUT = "[input]";

    /** From this many times the highest current on a fuse protects little; from this many nothing (common practice). */
    private static final double FAR_ABOVE = 2;

    private static final double BEYOND_USE = 5;

    private final Design design;
    private final Input input;
    private final Remarks remarks;

    InputCheck(Design design, Remarks remarks) {
        this.design = design;
        this.input = design.input();
        this.remarks = remarks;
    }

    void take() {
        start();
        Optional<Prediction> full = atFullLoad(design);
        OptionalDouble highest = input.highestAmperes().isPresent()
                ? input.highestAmperes()
                : design.limits().inputAmperes();
        if (input.fuseAmperes().isPresent() && highest.isPresent()) {
            fuse(input.fuseAmperes().getAsDouble(), highest.getAsDouble());
        }
        full.ifPresent(this::needed);
    }

    private void start() {
        double lowest = input.lowestVolts().orElse(input.nominalVolts());
        double start = design.converter().startVolts().orElse(0);
        if (start > lowest) {
            remarks.cannotBe(
                    "[converter]",
                    Remarks.ONLY,
                    "start_V",
                    "the unit starts at %s V and the lowest planned input is %s V, at which it would stay off; put start_V"
                            + " or lowest_V right",
                    start,
                    lowest);
        }
    }

    private void fuse(double fuse, double highest) {
        if (fuse > FAR_ABOVE * highest) {
            remarks.add(
                    fuse > BEYOND_USE * highest ? Remark.Weight.CANNOT_BE : Remark.Weight.LOOK,
                    INPUT,
                    Remarks.ONLY,
                    "fuse_A",
                    "a fuse of %s A lies far above the highest current of %s A and protects nothing; fit a smaller one for"
                            + " the test",
                    fuse,
                    highest);
        } else if (fuse < highest) {
            remarks.look(
                    INPUT,
                    Remarks.ONLY,
                    "fuse_A",
                    "a fuse of %s A blows before the highest current of %s A",
                    fuse,
                    highest);
        }
    }

    /** What the turns alone need at full load; unknown losses come on top. */
    private void needed(Prediction full) {
        String least = full.complete() ? "" : " or more";
        double amperes = full.inputAmperes();
        if (amperes > input.highestAmperes().orElse(amperes)) {
            remarks.look(
                    INPUT,
                    Remarks.ONLY,
                    "highest_A",
                    "full load needs %s A%s and the highest input current is %s A: such steps will be left out",
                    amperes,
                    least,
                    input.highestAmperes().orElseThrow());
        }
        if (amperes > input.fuseAmperes().orElse(amperes)) {
            remarks.look(
                    INPUT,
                    Remarks.ONLY,
                    "fuse_A",
                    "full load needs %s A%s and the fuse is %s A",
                    amperes,
                    least,
                    input.fuseAmperes().orElseThrow());
        }
    }

    /** Full load of all rails at the nominal input; empty where a rail's full load or the turns are not known. */
    static Optional<Prediction> atFullLoad(Design design) {
        Map<String, Double> loads = new LinkedHashMap<>();
        for (Rail rail : design.rails()) {
            if (rail.fullLoadAmperes().isEmpty()) {
                return Optional.empty();
            }
            loads.put(rail.name(), rail.fullLoadAmperes().getAsDouble());
        }
        return Prediction.of(design, design.input().nominalVolts(), loads);
    }
}
