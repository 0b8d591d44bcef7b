package railwitness.drivers.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RealSchedulerTest {
    private final RealScheduler scheduler = new RealScheduler();
    private final List<String> log = new ArrayList<>();

    @Test
    void tasksPostedFromOtherThreadsRunOnTheCallingThread() throws InterruptedException {
        List<Thread> ranOn = new ArrayList<>();
        Thread other = new Thread(() -> scheduler.post(() -> ranOn.add(Thread.currentThread())));
        other.start();
        scheduler.runUntil(() -> !ranOn.isEmpty());
        other.join();
        assertThat(ranOn).containsExactly(Thread.currentThread());
    }

    @Test
    void laterTaskRunsAfterEarlierOneAndNeverTooSoon() {
        long[] ran = new long[1];
        long now = scheduler.nowNanos();
        long due = now + Duration.ofMillis(40).toNanos();
        scheduler.at(due, () -> {
            ran[0] = scheduler.nowNanos();
            log.add("late");
        });
        scheduler.at(now + Duration.ofMillis(20).toNanos(), () -> log.add("early"));
        scheduler.at(now, () -> log.add("now"));
        scheduler.runUntil(() -> log.size() == 3);
        assertThat(log).containsExactly("now", "early", "late");
        assertThat(ran[0]).isGreaterThanOrEqualTo(due);
    }

    @Test
    void cancelledTaskDoesNotRun() {
        scheduler.after(Duration.ofMillis(1), () -> log.add("cancelled")).cancel();
        scheduler.after(Duration.ofMillis(2), () -> log.add("kept"));
        scheduler.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("kept");
    }
}
