package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.findings.SessionFindings;

/** Power does not wait for ever for somebody who has gone. */
class PatientPersonTest {
    private static final String BENCH = """
            [bench]
            name = "Bench in the wheelhouse"
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "supply"
            highest_A = 40
            [[instrument]]
            name = "plus meter"
            kind = "meter"
            port = "plus"
            reads = "plus.voltage"
            range = 100
            [[hand_read]]
            name = "old multimeter"
            reads = "minus.voltage"
            [[resistor_bank]]
            rail = "plus"
            resistances_ohm = [18.4]
            [[resistor_bank]]
            rail = "minus"
            resistances_ohm = [18.4]
            """;

    private final VirtualScheduler scheduler = new VirtualScheduler(Instant.parse("2026-11-25T10:00:00Z"));
    private final Silent silent = new Silent(scheduler);
    private final List<String> unanswered = new ArrayList<>();
    private final PatientPerson person = new PatientPerson(scheduler, silent, Duration.ofMinutes(5), unanswered::add);

    @TempDir
    Path folder;

    /** Answers only what comes before its time is over. */
    private static final class Silent implements Person {
        private final VirtualScheduler scheduler;
        private final List<Runnable> asked = new ArrayList<>();
        private long answersUntilNanos;

        Silent(VirtualScheduler scheduler) {
            this.scheduler = scheduler;
        }

        private void later(Runnable answer) {
            asked.add(answer);
            if (scheduler.nowNanos() < answersUntilNanos) {
                scheduler.after(Duration.ofSeconds(1), answer);
            }
        }

        @Override
        public void act(String sentence, Runnable done) {
            later(done);
        }

        @Override
        public void read(String sentence, Consumer<OptionalDouble> value) {
            later(() -> value.accept(OptionalDouble.of(1)));
        }

        @Override
        public void disconnect(String sentence, Runnable open) {
            asked.add(open);
        }

        @Override
        public void forget() {
            // nobody reads what is asked
        }
    }

    private void pass(Duration time) {
        long until = scheduler.nowNanos() + time.toNanos();
        scheduler.at(until, () -> {});
        scheduler.runUntil(() -> scheduler.nowNanos() >= until);
    }

    @Test
    void aQuestionThatNobodyAnswersIsToldOnceAfterItsTime() {
        person.act("Switch the load bank", () -> {});
        pass(Duration.ofSeconds(299));
        assertThat(unanswered).isEmpty();
        pass(Duration.ofSeconds(2));
        assertThat(unanswered).containsExactly("nobody answered within 5 min: Switch the load bank");
    }

    @Test
    void anAnswerEndsTheLimitAndALateOneIsNotHeard() {
        List<String> done = new ArrayList<>();
        person.act("first", () -> done.add("first"));
        silent.asked.get(0).run();
        person.act("second", () -> done.add("second"));
        pass(Duration.ofMinutes(6));
        silent.asked.get(1).run();
        assertThat(done).containsExactly("first");
        assertThat(unanswered).hasSize(1);
    }

    @Test
    void whatIsForgottenHasNoLimitAndNoAnswer() {
        List<String> done = new ArrayList<>();
        person.act("first", () -> done.add("first"));
        person.forget();
        pass(Duration.ofMinutes(6));
        silent.asked.get(0).run();
        assertThat(done).isEmpty();
        assertThat(unanswered).isEmpty();
    }

    @Test
    void theDisconnectIsAskedForWithoutLimit() {
        person.disconnect("open it", () -> {});
        pass(Duration.ofHours(2));
        assertThat(unanswered).isEmpty();
    }

    /** Somebody who goes away at any time of a run by hand: off, kept, and said why. */
    @Test
    void whoeverLeavesARunByHandLeavesItOff() {
        for (int leaves = 0; leaves < 60; leaves += 4) {
            Path file = folder.resolve("left" + leaves + ".session");
            long until = leaves * 1_000_000_000L;
            StoppedSession session = new StoppedSession(-1, run -> {});
            session.virtual(
                    file,
                    BENCH,
                    (clock, far) -> {
                        Silent gone = new Silent((VirtualScheduler) clock);
                        gone.answersUntilNanos = until;
                        return gone;
                    },
                    clock -> {});
            SessionFindings findings = SessionFindings.of(file);
            assertThat(session.far.supply("supply").isOn())
                    .as("left after %d s", leaves)
                    .isFalse();
            assertThat(findings.state())
                    .as("left after %d s: %s", leaves, session.told)
                    .isEqualTo(SessionState.TRIPPED);
            assertThat(session.told).as("left after %d s", leaves).anyMatch(words -> words.startsWith("trip: "));
            assertThat(Verification.of(file).isIntact()).isTrue();
        }
    }
}
