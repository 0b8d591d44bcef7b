package railwitness.drivers.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.Function;
import railwitness.drivers.bench.Introduction.Met;

/** The first talks with several instruments at the same time, each on a thread of its own. */
final class Introductions {
    /** Whoever has not answered by then is named, and again each time this has passed. */
    private static final long NAMED_AFTER_SECONDS = 3;

    private Introductions() {}

    /**
     * Returns when all of them have ended, in the order given.
     *
     * @param told what is waited for, on the calling thread
     * @throws RuntimeException the first one's in that order, when any fails; all lines are then closed again
     */
    static List<Met> atOnce(
            List<InstrumentSheet> instruments, Function<InstrumentSheet, Introduction> made, Consumer<String> told) {
        Map<String, CompletableFuture<Met>> all = new LinkedHashMap<>();
        instruments.forEach(sheet -> all.put(sheet.name(), begun(sheet.name(), made.apply(sheet))));
        told.accept("each instrument is asked who it is: " + String.join(", ", all.keySet()));
        try {
            awaitAll(all, told);
            return results(all);
        } catch (RuntimeException e) {
            all.values().forEach(one -> one.thenAccept(met -> met.line().close()));
            throw e;
        }
    }

    private static CompletableFuture<Met> begun(String name, Introduction introduction) {
        CompletableFuture<Met> met = new CompletableFuture<>();
        Thread thread = new Thread(
                () -> {
                    try {
                        met.complete(introduction.meet());
                    } catch (RuntimeException | Error e) {
                        met.completeExceptionally(e);
                    }
                },
                "introduction of " + name);
        thread.setDaemon(true);
        thread.start();
        return met;
    }

    private static void awaitAll(Map<String, CompletableFuture<Met>> all, Consumer<String> told) {
        CompletableFuture<Void> over = CompletableFuture.allOf(all.values().toArray(CompletableFuture[]::new));
        while (!over.isDone()) {
            try {
                over.get(NAMED_AFTER_SECONDS, TimeUnit.SECONDS);
            } catch (TimeoutException slow) {
                List<String> waitedFor = new ArrayList<>();
                all.forEach((name, one) -> waitedFor.addAll(one.isDone() ? List.of() : List.of(name)));
                if (!waitedFor.isEmpty()) {
                    told.accept("still waiting for " + String.join(", ", waitedFor));
                }
            } catch (ExecutionException failed) {
                return;
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("interrupted while the bench was opened", e);
            }
        }
    }

    private static List<Met> results(Map<String, CompletableFuture<Met>> all) {
        List<Met> met = new ArrayList<>();
        for (CompletableFuture<Met> one : all.values()) {
            try {
                met.add(one.join());
            } catch (CompletionException e) {
                if (e.getCause() instanceof RuntimeException own) {
                    throw own;
                }
                if (e.getCause() instanceof Error own) {
                    throw own;
                }
                throw e;
            }
        }
        return met;
    }
}
