package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.record.RunEnd;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.store.StepEntry;

/** What a person sees of a run on the command line: one line for each thing that happens. */
final class Progress implements RunListener {
    private static final Set<EventKind> WRONG =
            EnumSet.of(EventKind.TRIP, EventKind.NO_GUARDIAN, EventKind.ALARM, EventKind.STOP);

    private final PrintWriter out;
    private final boolean talking;

    /** @param talking false: only what went wrong is said */
    Progress(PrintWriter out, boolean talking) {
        this.out = out;
        this.talking = talking;
    }

    @Override
    public void happened(double atSeconds, SessionEvent event) {
        if (talking || WRONG.contains(event.kind())) {
            say(String.format(Locale.ROOT, "%8.1f s  %s: %s", atSeconds, event.what(), event.words()));
        }
    }

    @Override
    public void began(int index, int of, Step step) {
        if (talking) {
            say("            step " + index + " of " + of + ": " + step.stage() + ", " + step.name());
        }
    }

    @Override
    public void averaging(Step step, boolean settled) {
        if (talking) {
            say("            " + (settled ? "settled" : "not settled in time") + ", averaging");
        }
    }

    @Override
    public void ended(Step step, StepEntry entry) {
        if (talking && !entry.reason().isEmpty()) {
            say("            " + entry.outcome().words() + ": " + entry.reason());
        }
    }

    void ended(RunEnd end) {
        if (talking || !end.offConfirmed()) {
            say(end.words());
        }
    }

    private void say(String line) {
        out.println(line);
        out.flush();
    }
}
