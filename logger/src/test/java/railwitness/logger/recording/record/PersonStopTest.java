package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.findings.SessionFindings;

/** A person's stop is a person's stop at every moment of a plan: never taken for a fault of an instrument or the unit. */
@Execution(ExecutionMode.CONCURRENT)
class PersonStopTest {
    private static final String BY_HAND = "switched off by hand";

    @TempDir
    Path folder;

    /** The bytes leave at once and the stop waits in the queue, as on a real bench. */
    @Test
    void atEverythingThatIsToldOnTheVirtualClock() {
        int all = ended(-1).told.size();
        List<String> wrong = new ArrayList<>();
        for (int at = 1; at <= all; at++) {
            StoppedSession stopped = ended(at);
            check("at " + at, stopped, folder.resolve("at" + at + ".session"), wrong);
        }
        System.out.println("stopped at each of " + all + " things told");
        assertThat(all).isGreaterThan(60);
        assertThat(wrong).isEmpty();
    }

    private StoppedSession ended(int at) {
        StoppedSession session = new StoppedSession(at, run -> run.stopNow(BY_HAND));
        session.virtual(folder.resolve("at" + at + ".session"));
        return session;
    }

    @Test
    void atAnyTimeOnTheVirtualClock() {
        long seed = 20261127;
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            long nanos = (long) (random.nextDouble() * 75e9);
            Path file = folder.resolve("time" + i + ".session");
            StoppedSession session = new StoppedSession(-1, run -> {});
            session.virtual(
                    file,
                    railwitness.logger.recording.sheet.Sheets.demo().bench().text(),
                    RehearsalPerson::new,
                    scheduler -> scheduler.at(
                            nanos, () -> session.session.running().ifPresent(run -> run.stopNow(BY_HAND))));
            check("at " + nanos + " ns", session, file, wrong);
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void overPseudoTerminalsInRealTime() throws Exception {
        assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        long seed = 5;
        Random random = new Random(seed);
        ExecutorService pool = Executors.newFixedThreadPool(4);
        List<String> wrong = new ArrayList<>();
        try {
            List<Future<StoppedSession>> all = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                int at = 12 + random.nextInt(50);
                Path file = folder.resolve("real" + i + ".session");
                all.add(pool.submit(() -> {
                    // from another thread, as a key is: while requests are under way
                    StoppedSession session =
                            new StoppedSession(at, run -> new Thread(() -> run.stopNow(BY_HAND)).start());
                    session.real(file);
                    return session;
                }));
            }
            for (int i = 0; i < all.size(); i++) {
                check("real " + i, all.get(i).get(), folder.resolve("real" + i + ".session"), wrong);
            }
        } finally {
            pool.shutdownNow();
        }
        assertThat(wrong).isEmpty();
    }

    private static void check(String when, StoppedSession session, Path file, List<String> wrong) {
        SessionFindings findings = SessionFindings.of(file);
        boolean late = session.told.stream().anyMatch(words -> words.startsWith("end:"))
                && session.told.stream().noneMatch(words -> words.startsWith("stop:"));
        boolean afterEnd = session.told.stream().anyMatch(words -> words.startsWith("end:"));
        if (!late && !afterEnd && findings.state() != SessionState.STOPPED) {
            wrong.add(when + " " + findings.state() + " " + tail(session.told));
        }
        if (findings.events().stream().map(EventEntry::what).anyMatch("trip"::equals)) {
            wrong.add(when + " has a trip " + tail(session.told));
        }
        if (session.far.supply("supply").isOn()) {
            wrong.add(when + " is on");
        }
        if (!Verification.of(file).isIntact()) {
            wrong.add(when + " is not kept whole");
        }
    }

    private static List<String> tail(List<String> told) {
        return told.subList(Math.max(0, told.size() - 14), told.size());
    }
}
