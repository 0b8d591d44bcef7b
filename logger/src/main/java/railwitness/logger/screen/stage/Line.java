package railwitness.logger.screen.stage;

import java.util.List;
import java.util.Optional;

/**
 * The line at the bottom: what is happening, what comes next, how long.
 *
 * @param head what is happening
 * @param caption what comes next
 * @param progress of something that takes time
 * @param acts what the person can do now, the usual one last
 */
public record Line(String head, String caption, Optional<Progress> progress, List<Act> acts) {
    public Line {
        acts = List.copyOf(acts);
    }

    /**
     * How far something is.
     *
     * @param share 0 to 1
     */
    public record Progress(String words, double share) {}

    public static Line of(String head, String caption, Act... acts) {
        return new Line(head, caption, Optional.empty(), List.of(acts));
    }

    public Line with(Progress progress) {
        return new Line(head, caption, Optional.of(progress), acts);
    }
}
