package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.findings.SessionFindings;

/** Whatever but the supply is pulled out and put back in a plan: off, paused, put back, the plan done. */
class PulledOutTest {
    private static final List<String> METERS = List.of(
            "input meter",
            "input shunt meter",
            "plus meter",
            "minus meter",
            "plus ripple meter",
            "minus ripple meter",
            "heat-sink meter");

    @TempDir
    static Path folder;

    private static List<String> asItWas;
    private static List<String> wanted;

    private VirtualScheduler clock;

    @BeforeAll
    static void wholePlan() {
        PulledOutTest test = new PulledOutTest();
        asItWas = test.run("whole", -1, "plus meter", Duration.ZERO).told;
        wanted = test.steps("whole");
    }

    private Path file(String name) {
        return folder.resolve(name + ".session");
    }

    private StoppedSession run(String name, int at, String instrument, Duration away) {
        StoppedSession[] session = new StoppedSession[1];
        session[0] = new StoppedSession(at, run -> {
            session[0].far.instrument(instrument).trouble(Trouble.VANISHED);
            clock.after(away, () -> session[0].far.instrument(instrument).cure());
        });
        session[0].virtual(
                file(name), Sheets.demo().bench().text(), RehearsalPerson::new, scheduler -> clock = scheduler);
        return session[0];
    }

    private List<String> steps(String name) {
        return SessionFindings.of(file(name)).steps().stream()
                .filter(step -> step.outcome() == StepOutcome.MEASURED)
                .map(StepEntry::step)
                .toList();
    }

    private boolean told(String name, EventKind kind) {
        return SessionFindings.of(file(name)).events().stream().anyMatch(event -> event.is(kind));
    }

    private int firstTold(String begin) {
        for (int i = 0; i < asItWas.size(); i++) {
            if (asItWas.get(i).startsWith(begin)) {
                return i + 1;
            }
        }
        throw new AssertionError("'" + begin + "' is not told in " + asItWas);
    }

    /**
     * From listening to the last step, each meter at moments of its own. {@code -Drailwitness.moments=9} takes each at nine
     * times as many of them.
     */
    @Test
    void whicheverMeterIsPulledOutForTwentySecondsTheSessionIsKept() {
        int moments = Integer.getInteger("railwitness.moments", 1);
        List<String> wrong = new ArrayList<>();
        int last = firstTold("end:") - 2;
        int paused = 0;
        for (int i = 0; i < METERS.size() * moments; i++) {
            String meter = METERS.get(i % METERS.size());
            int at = 2 + i * (last - 2) / (METERS.size() * moments - 1);
            String name = meter.replace(' ', '-') + at;
            StoppedSession session = run(name, at, meter, Duration.ofSeconds(20));
            boolean was = told(name, EventKind.PAUSED);
            paused += was ? 1 : 0;
            boolean whole = SessionFindings.of(file(name)).state() == SessionState.COMPLETE
                    && steps(name).equals(wanted)
                    && Verification.of(file(name)).isIntact()
                    && !session.far.supply("supply").isOn()
                    && was == told(name, EventKind.GOES_ON)
                    && told(name, EventKind.LINE)
                    && !told(name, EventKind.TRIP);
            if (!whole) {
                wrong.add(name + " " + SessionFindings.of(file(name)).state() + " " + steps(name) + " "
                        + session.told.subList(at - 1, session.told.size()));
            }
        }
        System.out.println(paused + " pauses in " + METERS.size() * moments + " sessions");
        assertThat(wrong).isEmpty();
        assertThat(paused).isGreaterThan(4 * moments);
    }

    /** Off does not need the load; it is asked and told again once it is back. */
    @Test
    void aLoadThatIsPulledOutUnderPowerIsPutBackToo() {
        run("load", firstTold("averaging 50 %"), "plus load", Duration.ofSeconds(20));
        assertThat(SessionFindings.of(file("load")).state()).isEqualTo(SessionState.COMPLETE);
        assertThat(told("load", EventKind.PAUSED)).isTrue();
        assertThat(steps("load")).isEqualTo(wanted);
    }

    @Test
    void theOutputIsOffWithinASecondAndStaysOffUntilThePersonSaysSo() {
        int at = firstTold("averaging 50 %");
        long[] lost = {0};
        StoppedSession[] session = new StoppedSession[1];
        List<String> off = new ArrayList<>();
        session[0] = new StoppedSession(at, run -> {
            lost[0] = clock.nowNanos();
            session[0].far.instrument("plus meter").trouble(Trouble.VANISHED);
            clock.after(
                    Duration.ofSeconds(1),
                    () -> off.add("on " + session[0].far.supply("supply").isOn()));
            clock.after(
                    Duration.ofSeconds(30),
                    () -> session[0].far.instrument("plus meter").cure());
            clock.after(
                    Duration.ofSeconds(31),
                    () -> off.add("on " + session[0].far.supply("supply").isOn()));
        });
        session[0].virtual(
                file("off"), Sheets.demo().bench().text(), RehearsalPerson::new, scheduler -> clock = scheduler);
        assertThat(off).containsExactly("on false", "on false");
        assertThat(session[0].told)
                .anyMatch(words -> words.startsWith("paused: plus meter is away: put it back"))
                .anyMatch(words ->
                        words.matches("line: plus meter is there again after (29|30)\\.\\d s without readings"));
        assertThat(steps("off")).isEqualTo(wanted);
    }

    /** What tells nothing of the unit's safety may be away for a moment without costing the power. */
    @Test
    void aRippleMeterThatIsBackWithinASecondCostsItsStepOnly() {
        StoppedSession session = run("ripple", firstTold("averaging 50 %"), "plus ripple meter", Duration.ofSeconds(1));
        assertThat(told("ripple", EventKind.PAUSED)).isFalse();
        assertThat(told("ripple", EventKind.REPEATED)).isTrue();
        assertThat(steps("ripple")).isEqualTo(wanted);
        assertThat(session.told).noneMatch(words -> words.startsWith("trip"));
    }

    @Test
    void whatIsNeverPutBackEndsTheSessionAfterTenMinutesAndKeepsIt() {
        StoppedSession session = run("never", firstTold("averaging 50 %"), "minus meter", Duration.ofHours(5));
        SessionFindings findings = SessionFindings.of(file("never"));
        assertThat(findings.state()).isEqualTo(SessionState.STOPPED);
        assertThat(session.far.supply("supply").isOn()).isFalse();
        assertThat(session.told).anyMatch(words -> words.contains("minus meter was not put back within 10 min"));
        assertThat(Verification.of(file("never")).isIntact()).isTrue();
        assertThat(findings.steps()).isNotEmpty();
    }

    @Test
    void theSupplyPulledOutStillTrips() {
        StoppedSession session = run("supply", firstTold("averaging 50 %"), "supply", Duration.ofSeconds(10));
        assertThat(SessionFindings.of(file("supply")).state()).isEqualTo(SessionState.TRIPPED);
        assertThat(session.far.supply("supply").isOn()).isFalse();
        assertThat(session.told).anyMatch(words -> words.contains("its port has gone, so it can no longer be watched"));
    }
}
