package railwitness.logger.recording.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Remark;
import railwitness.logger.recording.plan.CrossLoad;
import railwitness.logger.recording.plan.Hold;
import railwitness.logger.recording.plan.LineSweep;
import railwitness.logger.recording.plan.LoadSweep;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.plan.PowerUp;
import railwitness.logger.recording.plan.Stage;

/** Whether a plan asks of the unit what its design sheet lets it ask. */
final class PlanCheck {
    private static final String STAGE = "[[stage]]";

    private final Design design;
    private final List<Remark> remarks = new ArrayList<>();

    private PlanCheck(Design design) {
        this.design = design;
    }

    static List<Remark> of(Plan plan, Design design) {
        PlanCheck check = new PlanCheck(design);
        for (int place = 0; place < plan.stages().size(); place++) {
            check.load(plan.stages().get(place), place);
            check.input(plan.stages().get(place), place);
        }
        return List.copyOf(check.remarks);
    }

    /** Steps in percent of a full load that the sheet does not state would all be taken at 0 A. */
    private void load(Stage stage, int place) {
        String key = loadKey(stage);
        if (key.isEmpty()) {
            return;
        }
        List<String> unknown = design.rails().stream()
                .filter(rail -> rail.fullLoadAmperes().isEmpty())
                .map(Rail::name)
                .toList();
        if (unknown.size() == design.rails().size() && stage instanceof LineSweep) {
            say(
                    Remark.Weight.LOOK,
                    place,
                    key,
                    "%s will be taken without load: the design sheet states no full_load_A",
                    stage.word());
        } else if (unknown.size() == design.rails().size()) {
            say(
                    Remark.Weight.CANNOT_BE,
                    place,
                    key,
                    "%s loads in percent of full load, and the design sheet states no full load: give full_load_A under"
                            + " [[rail]], or take this stage out",
                    stage.word());
        } else if (!unknown.isEmpty()) {
            say(
                    Remark.Weight.LOOK,
                    place,
                    key,
                    "%s will never load %s: the design sheet states no full_load_A there",
                    stage.word(),
                    String.join(", ", unknown));
        }
    }

    /** The key that says how much is drawn; empty for a stage that draws nothing. */
    private static String loadKey(Stage stage) {
        if (stage instanceof LoadSweep) {
            return "loads_pct";
        }
        if (stage instanceof CrossLoad) {
            return "high_pct";
        }
        boolean loaded = stage instanceof LineSweep line && line.loadPercent() > 0
                || stage instanceof Hold hold && hold.loadPercent() > 0;
        return loaded ? "load_pct" : "";
    }

    private void input(Stage stage, int place) {
        if (stage instanceof LineSweep sweep) {
            double most = sweep.inputVolts().stream()
                    .mapToDouble(Double::doubleValue)
                    .max()
                    .orElseThrow();
            double highest = design.input().highestVolts().orElse(most);
            if (most > highest) {
                say(
                        Remark.Weight.LOOK,
                        place,
                        "inputs_V",
                        "the plan goes to %s V and the design sheet's highest input is %s V",
                        text(most),
                        text(highest));
            }
        }
        if (stage instanceof Hold hold) {
            double most = hold.cycle().stream()
                    .mapToDouble(part -> part.inputVolts().orElse(0))
                    .max()
                    .orElse(0);
            double highest = design.input().highestVolts().orElse(most);
            if (most > highest) {
                say(
                        Remark.Weight.LOOK,
                        place,
                        "cycle",
                        "the cycle goes to %s V and the design sheet's highest input is %s V",
                        text(most),
                        text(highest));
            }
        }
        if (stage instanceof PowerUp up) {
            double highest = design.input().highestAmperes().orElse(up.currentLimitAmps());
            if (up.currentLimitAmps() > highest) {
                say(
                        Remark.Weight.LOOK,
                        place,
                        "current_limit_A",
                        "power comes up behind %s A and the design sheet's highest input current is %s A",
                        text(up.currentLimitAmps()),
                        text(highest));
            }
        }
    }

    private void say(Remark.Weight weight, int place, String key, String form, Object... values) {
        remarks.add(new Remark(weight, STAGE, place, key, String.format(Locale.ROOT, form, values)));
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.4g", value)
                .replaceAll("(\\.\\d*?)0+$", "$1")
                .replaceAll("\\.$", "");
    }
}
