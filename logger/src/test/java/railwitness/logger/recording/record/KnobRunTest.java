package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.instrument.KnobTurn;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetException;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.fixture.ShortPlan;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.safety.power.PowerState;

/** A bench without any serial line: the person is the actuator. */
class KnobRunTest {
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");
    private static final Path BENCH = Path.of("../sessions-sample/benches/one-meter-and-knobs.toml");

    @TempDir
    private Path folder;

    private final VirtualScheduler scheduler = new VirtualScheduler(START);
    private final List<SessionEvent> events = new ArrayList<>();
    private final List<String> shouted = new ArrayList<>();
    private Duration slowToSwitchOff = Duration.ZERO;
    private OptionalDouble clampShows = OptionalDouble.empty();
    private VirtualBench far;
    private LiveSession session;

    @BeforeEach
    void empty() {
        events.clear();
    }

    private static Sheets sheets(String bench) {
        return new Sheets(
                Sheets.demo().design(),
                SheetText.of("bench", Sheet.of("bench.toml", bench), BenchSheet::from),
                SheetText.of(
                        "plan",
                        Sheet.of("plan.toml", ShortPlan.of(0.5, "power-up", "no-load", "load-sweep; loads_pct = [50]")),
                        PlanReader::plan));
    }

    private static String bench() throws java.io.IOException {
        return java.nio.file.Files.readString(BENCH);
    }

    private RunEnd run(List<Fault> faults) throws java.io.IOException {
        Sheets sheets = sheets(bench());
        far = FixtureMaker.bench(sheets, faults, 4, scheduler::nowNanos);
        session = new LiveSession(
                sheets,
                scheduler,
                far.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                new Hands(new RehearsalPerson(scheduler, far)),
                new RunListener() {
                    @Override
                    public void happened(double atSeconds, SessionEvent event) {
                        events.add(event);
                    }
                });
        return session.run(
                folder.resolve("knobs.session"),
                new SessionHead("knobs", START, ZoneOffset.UTC, true, "test", "", "unit", "", ""));
    }

    /** The person of a rehearsal, slower or with another clamp where a test wants that. */
    private final class Hands implements Person {
        private final Person person;

        Hands(Person person) {
            this.person = person;
        }

        @Override
        public void act(String sentence, Runnable done) {
            person.act(sentence, done);
        }

        @Override
        public void read(String sentence, Consumer<OptionalDouble> value) {
            person.read(sentence, value);
        }

        @Override
        public void read(HandRead meter, Consumer<OptionalDouble> value) {
            boolean loaded = events.stream().anyMatch(event -> event.is(EventKind.LOAD_SWITCHED));
            if (meter.name().equals("clamp") && loaded && clampShows.isPresent()) {
                scheduler.after(Duration.ofSeconds(1), () -> value.accept(clampShows));
            } else {
                person.read(meter, value);
            }
        }

        @Override
        public void readAgain(HandRead meter, String doubt, Consumer<OptionalDouble> value) {
            read(meter, value);
        }

        @Override
        public void switchRemote(boolean on, Runnable done) {
            person.switchRemote(on, done);
        }

        @Override
        public void switchLoad(String rail, double ohms, DoubleConsumer switched) {
            person.switchLoad(rail, ohms, switched);
        }

        @Override
        public void turn(KnobTurn turn, Consumer<OptionalDouble> shown) {
            person.turn(turn, shown);
        }

        @Override
        public void switchOff(String sentence, Runnable isOff) {
            boolean powered = far.supply("supply with knobs").isOn();
            scheduler.after(powered ? slowToSwitchOff : Duration.ZERO, () -> person.switchOff(sentence, isOff));
        }

        @Override
        public void offNow() {
            shouted.add(String.valueOf(session.running().orElseThrow().power().state()));
        }

        @Override
        public void disconnect(String sentence, Runnable open) {
            throw new AssertionError("a person with knobs is asked to switch off, by word");
        }

        @Override
        public void forget() {
            person.forget();
        }
    }

    private List<EventKind> kinds() {
        return events.stream().map(SessionEvent::kind).toList();
    }

    @Test
    void aSoundUnitIsMeasuredAndSwitchedOffWithoutAnAlarm() throws Exception {
        RunEnd end = run(List.of());
        assertThat(end.state()).isEqualTo(SessionState.COMPLETE);
        assertThat(end.offConfirmed()).isTrue();
        assertThat(end.words()).contains("by a person's word", "rails below");
        assertThat(far.supply("supply with knobs").isOn()).isFalse();
        assertThat(shouted).isEmpty();
        assertThat(kinds()).doesNotContain(EventKind.ALARM);
        assertThat(events.stream().filter(event -> event.is(EventKind.LEFT_OUT)))
                .hasSize(4)
                .anyMatch(event -> event.words().contains("your hand is what switches"));
    }

    @Test
    void aFaultIsSaidAtOnceAndOffCountsOnlyOnceTheRailsAreReadLow() throws Exception {
        RunEnd end = run(List.of(Fault.of("shorted-rectifier")));
        assertThat(end.state()).isEqualTo(SessionState.TRIPPED);
        assertThat(shouted).isNotEmpty();
        assertThat(kinds()).containsSubsequence(EventKind.ALARM, EventKind.ALARM_OVER, EventKind.OFF);
        assertThat(far.supply("supply with knobs").isOn()).isFalse();
        assertThat(session.running()
                        .orElseThrow()
                        .power()
                        .discharge()
                        .orElseThrow()
                        .belowTouch())
                .isTrue();
        assertThat(end.offConfirmed()).isTrue();
    }

    @Test
    void whoDoesNotSwitchOffIsToldAgainAndItNeverCountsAsOffUntilThen() throws Exception {
        slowToSwitchOff = Duration.ofSeconds(45);
        clampShows = OptionalDouble.of(35);
        RunEnd end = run(List.of());
        assertThat(end.state()).isEqualTo(SessionState.TRIPPED);
        assertThat(shouted).hasSizeGreaterThanOrEqualTo(4);
        assertThat(shouted).doesNotContain(PowerState.OFF.toString(), PowerState.DISCHARGING.toString());
        assertThat(end.offConfirmed()).isTrue();
    }

    @Test
    void aTypedReadingBeyondItsLimitTrips() throws Exception {
        clampShows = OptionalDouble.of(35);
        RunEnd end = run(List.of());
        assertThat(end.state()).isEqualTo(SessionState.TRIPPED);
        assertThat(events.stream().filter(event -> event.is(EventKind.TRIP)).map(SessionEvent::words))
                .singleElement()
                .asString()
                .contains("input current", "35");
    }

    @Test
    void withoutTheWordsThereIsNoPower() throws Exception {
        String bench = bench().replaceAll("without_guardian = .*\n", "");
        assertThatThrownBy(() -> refused(bench))
                .isInstanceOf(SheetException.class)
                .hasMessageContaining("without_guardian");
    }

    private static void refused(String bench) {
        railwitness.logger.recording.sheet.SheetsCheck.refuse(sheets(bench));
    }
}
