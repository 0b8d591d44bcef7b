package railwitness.logger.reporting.comparing;

import java.util.List;

/**
 * One step of the plan in all sessions.
 *
 * @param stage its stage
 * @param step its name within the stage
 * @param values what was measured and worked out there; each found in one session at least
 */
public record ComparedStep(String stage, String step, List<Compared> values) {
    public ComparedStep {
        values = List.copyOf(values);
    }
}
