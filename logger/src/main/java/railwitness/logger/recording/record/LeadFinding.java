package railwitness.logger.recording.record;

import java.math.BigDecimal;
import java.math.MathContext;
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

    /** One line for the record, such as "input meter, leads together: 0.00002 V, allowed 0 +- 0.004 V: good". */
    public String words() {
        String where =
                switch (kind) {
                    case ZERO -> ", leads together: ";
                    case REST -> ", at rest: ";
                    case INPUT -> ", output off: ";
                };
        String wanted = allowed.isPresent()
                ? ", allowed " + number(against.orElse(0)) + " +- " + number(allowed.getAsDouble()) + " V: "
                : ", nothing states what is allowed: ";
        return subject + where + number(seen) + " V" + wanted
                + switch (outcome) {
                    case GOOD -> "good";
                    case BEYOND -> "beyond that";
                    case NOT_JUDGED -> "not judged";
                };
    }

    private static String number(double value) {
        return value == 0
                ? "0"
                : BigDecimal.valueOf(value)
                        .round(new MathContext(3))
                        .stripTrailingZeros()
                        .toPlainString();
    }

    LeadFinding beyond() {
        return new LeadFinding(kind, subject, seen, against, allowed, Outcome.BEYOND);
    }
}
