package railwitness.drivers.instrument;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.function.Consumer;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.Scheduler;

/** On a real bench: the station's thread sleeps until the scheduler's has the answer. */
record ThreadedHandWait(Scheduler scheduler) implements HandWait {
    @Override
    public <T> T await(Consumer<Consumer<T>> begin) {
        CompletableFuture<T> answer = new CompletableFuture<>();
        scheduler.post(() -> begin.accept(answer::complete));
        try {
            return answer.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw LineException.closed(HandLine.PORT, "");
        } catch (ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void post(Runnable task) {
        scheduler.post(task);
    }
}
