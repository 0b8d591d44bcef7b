package railwitness.logger.ui.command;

import java.io.PrintWriter;
import railwitness.logger.recording.record.ColdResistances;
import railwitness.safety.caution.Briefing;
import railwitness.safety.caution.Check;

/** Cautions and checklist before power, for the command line. */
final class BriefingPrint {
    private BriefingPrint() {}

    static void print(Briefing briefing, PrintWriter out) {
        out.println("Cautions");
        briefing.cautions().forEach(caution -> out.println("  " + caution.sentence()));
        out.println();
        out.println("Checklist");
        for (Check check : briefing.checklist().checks()) {
            out.println("  [ ] " + check.text()
                    + (check.leastOhms().isPresent()
                            ? String.format(
                                    java.util.Locale.ROOT,
                                    ", at least %.4g ohm, where it can be taken (--cold %s=OHM)",
                                    check.leastOhms().getAsDouble(),
                                    ColdResistances.place(check))
                            : ""));
        }
        out.println();
        out.flush();
    }
}
