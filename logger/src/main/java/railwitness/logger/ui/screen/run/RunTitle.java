package railwitness.logger.ui.screen.run;

import java.util.stream.Collectors;
import railwitness.analysis.design.Design;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/** What stands above the sheet. */
final class RunTitle {
    private RunTitle() {}

    static String title(Design design) {
        return design.unit()
                .serial()
                .map(serial -> Words.of("unit.serial", design.unit().name(), serial))
                .orElse(design.unit().name());
    }

    static String caption(Design design, Plan plan) {
        String condition = design.unit()
                .condition()
                .map(known -> Words.of("condition." + known.name()) + " \u00b7 ")
                .orElse("");
        String turns = design.transformer()
                .map(t -> Words.of("unit.turns", t.primaryTurns(), t.secondaryTurns()) + ", ")
                .orElse("");
        String rails = design.rails().stream()
                .map(rail -> Numbers.plain(rail.nominalVolts()) + " V")
                .collect(Collectors.joining(", "));
        return condition + turns + Words.of("unit.designed", rails) + " \u00b7 " + plan.name();
    }
}
