package railwitness.logger.ui.screen.stage;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;

/** Who holds ports behind the desk: a watch, a search. A run begins only when all of them have let go. */
public final class PortUse {
    private record Use(Runnable end, Optional<Runnable> reset, CompletableFuture<?> over) {}

    private final List<Use> uses = new CopyOnWriteArrayList<>();

    /**
     * Somebody takes ports.
     *
     * @param end asks for an end; returns at once
     * @param over completes when the ports have been let go
     */
    public void take(Runnable end, CompletableFuture<?> over) {
        take(new Use(end, Optional.empty(), over), over);
    }

    /**
     * Somebody takes ports of instruments that can be reset meanwhile.
     *
     * @param reset switches their outputs off once more; returns at once
     */
    public void take(Runnable end, Runnable reset, CompletableFuture<?> over) {
        take(new Use(end, Optional.of(reset), over), over);
    }

    /** Resets what can be reset; answers whether there was anything. */
    public boolean reset() {
        List<Runnable> resets =
                uses.stream().flatMap(use -> use.reset().stream()).toList();
        resets.forEach(Runnable::run);
        return !resets.isEmpty();
    }

    private void take(Use use, CompletableFuture<?> over) {
        uses.add(use);
        over.whenComplete((done, trouble) -> uses.remove(use));
    }

    /** Whether nobody holds a port. */
    public boolean free() {
        return uses.isEmpty();
    }

    /** Ends every use and waits until all ports have been let go; not for the event thread. */
    public void clear() {
        List<Use> all = List.copyOf(uses);
        all.forEach(use -> use.end().run());
        all.forEach(use -> use.over().handle((done, trouble) -> done).join());
    }
}
