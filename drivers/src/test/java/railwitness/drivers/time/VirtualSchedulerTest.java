package railwitness.drivers.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class VirtualSchedulerTest {
    private static final Instant START = Instant.parse("2026-05-11T08:00:00Z");
    private final VirtualScheduler scheduler = new VirtualScheduler(START);
    private final List<String> log = new ArrayList<>();

    private void note(String what) {
        log.add(what + "@" + scheduler.nowNanos());
    }

    @Test
    void clockJumpsFromTaskToTask() {
        scheduler.at(700, () -> note("late"));
        scheduler.at(20, () -> note("early"));
        scheduler.runUntil(() -> log.size() == 2);
        assertThat(log).containsExactly("early@20", "late@700");
    }

    @Test
    void equalTimesKeepTheirOrder() {
        for (int i = 0; i < 50; i++) {
            String name = "n" + i;
            scheduler.at(5, () -> log.add(name));
        }
        scheduler.runUntil(() -> log.size() == 50);
        assertThat(log).startsWith("n0", "n1", "n2").endsWith("n48", "n49");
    }

    @Test
    void cancelledTaskDoesNotRun() {
        Due due = scheduler.at(10, () -> note("cancelled"));
        scheduler.at(20, () -> note("kept"));
        due.cancel();
        scheduler.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("kept@20");
    }

    @Test
    void timeSpentAsideIsTurnedBack() {
        Duration spent = scheduler.aside(() -> {
            scheduler.spend(Duration.ofNanos(300));
            note("inside");
        });
        note("after");
        assertThat(spent).isEqualTo(Duration.ofNanos(300));
        assertThat(log).containsExactly("inside@300", "after@0");
    }

    @Test
    void wallClockFollowsVirtualTime() {
        scheduler.at(
                Duration.ofHours(6).toNanos(), () -> log.add(scheduler.wallNow().toString()));
        scheduler.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("2026-05-11T14:00:00Z");
    }

    @Test
    void emptyAgendaSaysThatNothingIsLeft() {
        assertThatThrownBy(() -> scheduler.runUntil(() -> false))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("nothing is left");
    }

    @Test
    void whatATaskThrowsEndsTheRun() {
        scheduler.post(() -> {
            throw new IllegalArgumentException("mistake");
        });
        assertThatThrownBy(() -> scheduler.runUntil(() -> false)).hasMessage("mistake");
    }
}
