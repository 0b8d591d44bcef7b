package railwitness.logger.ui.screen.stage;

import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;

/** One stage of the work. All methods are called on the event thread and return at once. */
public interface Stage {
    /** Its word, also the key of its sentences. */
    String key();

    JComponent face();

    /** Why it cannot be entered yet; empty when it can. */
    Optional<String> closed();

    /** It is about to be seen. */
    default void entered() {}

    /** A moment has gone by: everything that changes by itself is shown anew. */
    default void moment() {}

    /** The marks of the manual's pages about what the person is at, the nearest first. */
    default List<String> topics() {
        return List.of("stage-" + key());
    }

    /** It is meant to be read from two metres now: band and foot grow, and everything else gives way. */
    default boolean far() {
        return false;
    }

    /** What stands at the bottom of the window while it is seen. */
    StatusLine line();
}
