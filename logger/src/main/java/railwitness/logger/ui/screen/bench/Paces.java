package railwitness.logger.ui.screen.bench;

import java.util.List;

/** How fast a rehearsal may go. */
final class Paces {
    static final List<Integer> TIMES = List.of(1, 4, 20);

    private Paces() {}
}
