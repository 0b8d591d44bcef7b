package railwitness.logger.ui.screen.stage;

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
public record StatusLine(String head, String caption, Optional<Progress> progress, List<Act> acts) {
    public StatusLine {
        acts = List.copyOf(acts);
    }

    /**
     * How far something is.
     *
     * @param share 0 to 1
     */
    public record Progress(String words, double share) {}

    public static StatusLine of(String head, String caption, Act... acts) {
        return new StatusLine(head, caption, Optional.empty(), List.of(acts));
    }

    public StatusLine with(Progress progress) {
        return new StatusLine(head, caption, Optional.of(progress), acts);
    }
}
