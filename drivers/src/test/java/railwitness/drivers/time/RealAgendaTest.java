package railwitness.drivers.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RealAgendaTest {
    private final RealAgenda agenda = new RealAgenda();
    private final List<String> log = new ArrayList<>();

    @Test
    void tasksPostedFromOtherThreadsRunOnTheCallingThread() throws InterruptedException {
        List<Thread> ranOn = new ArrayList<>();
        Thread other = new Thread(() -> agenda.post(() -> ranOn.add(Thread.currentThread())));
        other.start();
        agenda.runUntil(() -> !ranOn.isEmpty());
        other.join();
        assertThat(ranOn).containsExactly(Thread.currentThread());
    }

    @Test
    void laterTaskRunsAfterEarlierOneAndNeverTooSoon() {
        long[] ran = new long[1];
        long now = agenda.nowNanos();
        long due = now + Duration.ofMillis(40).toNanos();
        agenda.at(due, () -> {
            ran[0] = agenda.nowNanos();
            log.add("late");
        });
        agenda.at(now + Duration.ofMillis(20).toNanos(), () -> log.add("early"));
        agenda.at(now, () -> log.add("now"));
        agenda.runUntil(() -> log.size() == 3);
        assertThat(log).containsExactly("now", "early", "late");
        assertThat(ran[0]).isGreaterThanOrEqualTo(due);
    }

    @Test
    void cancelledTaskDoesNotRun() {
        agenda.after(Duration.ofMillis(1), () -> log.add("cancelled")).cancel();
        agenda.after(Duration.ofMillis(2), () -> log.add("kept"));
        agenda.runUntil(() -> !log.isEmpty());
        assertThat(log).containsExactly("kept");
    }
}
