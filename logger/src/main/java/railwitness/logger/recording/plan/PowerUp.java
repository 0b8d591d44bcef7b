package railwitness.logger.recording.plan;

import java.util.List;

/**
 * The unit is turned on behind a current limit; nothing is averaged.
 *
 * @param currentLimitAmps the supply's limit until the rails are up, A
 */
public record PowerUp(double currentLimitAmps) implements Stage {
    @Override
    public String word() {
        return "power-up";
    }

    @Override
    public List<Step> steps(Rating rating) {
        return List.of();
    }
}
