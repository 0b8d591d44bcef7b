package railwitness.logger.recording.record;

import java.util.OptionalDouble;

/**
 * What was found at some leads before power.
 *
 * @param subject the instrument, or the channel as it is written
 * @param seen V
 * @param against what it should agree with, V; empty where that is zero
 * @param allowed how far it may be off, V; empty where nothing states it
 */
public record LeadFinding(
        Kind kind, String subject, double seen, OptionalDouble against, OptionalDouble allowed, Outcome outcome) {
    /** What was looked at. */
    public enum Kind {
        ZERO,
        REST,
        INPUT
    }

    /** What it comes to. */
    public enum Outcome {
        GOOD,
        BEYOND,
        NOT_JUDGED
    }

    static LeadFinding of(Kind kind, String subject, double seen, OptionalDouble against, OptionalDouble allowed) {
        double off = Math.abs(seen - against.orElse(0));
        Outcome outcome =
                allowed.isEmpty() ? Outcome.NOT_JUDGED : off <= allowed.getAsDouble() ? Outcome.GOOD : Outcome.BEYOND;
        return new LeadFinding(kind, subject, seen, against, allowed, outcome);
    }

    LeadFinding beyond() {
        return new LeadFinding(kind, subject, seen, against, allowed, Outcome.BEYOND);
    }
}
