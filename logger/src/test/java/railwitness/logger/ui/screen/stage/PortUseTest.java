package railwitness.logger.ui.screen.stage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Ports that somebody holds when a run wants them. */
@Timeout(10)
class PortUseTest {
    private final PortUse ports = new PortUse();

    @Test
    void clearingEndsEveryUseAndWaitsForTheSlowest() throws Exception {
        CompletableFuture<Void> quick = new CompletableFuture<>();
        CompletableFuture<Void> slow = new CompletableFuture<>();
        AtomicBoolean asked = new AtomicBoolean();
        ports.take(() -> quick.complete(null), quick);
        ports.take(() -> asked.set(true), slow);
        CompletableFuture<Void> cleared = CompletableFuture.runAsync(ports::clear);
        quick.get(5, TimeUnit.SECONDS);
        assertThat(cleared).isNotDone();
        slow.complete(null);
        cleared.get(5, TimeUnit.SECONDS);
        assertThat(asked).isTrue();
        assertThat(ports.free()).isTrue();
    }

    @Test
    void aUseThatEndedInTroubleHoldsNothing() {
        CompletableFuture<Void> broken = new CompletableFuture<>();
        ports.take(() -> broken.completeExceptionally(new IllegalStateException("unplugged")), broken);
        ports.clear();
        assertThat(ports.free()).isTrue();
    }
}
