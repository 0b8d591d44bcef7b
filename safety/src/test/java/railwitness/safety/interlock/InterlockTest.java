package railwitness.safety.interlock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;

class InterlockTest {
    private static final Channel AMPS = Channel.of("input.current");
    private static final Channel PLUS = Channel.of("plus.voltage");
    private static final Channel MINUS = Channel.of("minus.voltage");
    private static final Watch INPUT = Watch.of("input current", AMPS, Duration.ofSeconds(1), Limits.atMost(29))
            .during(Phase.STANDBY, Limits.atMost(0.02))
            .during(Phase.INRUSH, Limits.atMost(6))
            .during(Phase.WORKING, Limits.atMost(1));
    private static final Watch RAIL = Watch.of(
                    "plus rail", new Subject.Magnitude(PLUS), Duration.ofSeconds(3), Limits.atMost(45))
            .during(Phase.UP, Limits.between(20, 45));

    private long nowMillis;

    @Test
    void nothingIsPermittedBeforeEveryWatchWasHeard() {
        Interlock start = interlock(INPUT, RAIL);
        assertThat(start.permitted()).isFalse();
        assertThat(start.next(read(AMPS, 0)).permitted()).isFalse();
        assertThat(start.next(read(AMPS, 0)).next(read(PLUS, 0)).permitted()).isTrue();
    }

    @Test
    void enteringAPoweredPhaseUnheardTrips() {
        Interlock entered = interlock(INPUT).next(enter(Phase.STANDBY));
        assertThat(entered.trip()).get().extracting(Trip::kind).isEqualTo(Trip.Kind.SILENT);
    }

    @Test
    void silentChannelTripsAfterItsAge() {
        Interlock up = up();
        assertThat(up.next(tickAfter(1000)).permitted()).isTrue();
        Interlock late = up.next(tickAfter(1));
        assertThat(late.permitted()).isFalse();
        assertThat(late.trip().orElseThrow().words()).isEqualTo("input current was not read for 1.0 s");
    }

    @Test
    void aMissingReadingDoesNotRefreshAndItsReasonIsTold() {
        Interlock up = up();
        up = up.next(new Event.Read(new Missing(AMPS, "no answer in 0.9 s", nanos(), nanosAfter(900))));
        assertThat(up.permitted()).isTrue();
        assertThat(up.next(tickAfter(200)).trip().orElseThrow().words())
                .isEqualTo("input current was not read for 1.1 s (input.current: no answer in 0.9 s)");
    }

    @Test
    void ageCountsFromTheQuestion() {
        Interlock up = up();
        long asked = nanos();
        up = up.next(new Event.Read(new Measured(AMPS, 1, asked, nanosAfter(900))));
        assertThat(up.next(tickAfter(200)).permitted()).isFalse();
    }

    @Test
    void overloadCountsAsOutside() {
        Interlock trip = up().next(new Event.Read(new Overload(PLUS, nanos(), nanos())));
        assertThat(trip.trip().orElseThrow().words()).isEqualTo("plus rail is beyond the range, allowed is 20 to 45 V");
    }

    @Test
    void lowRailTripsOnlyOnceUp() {
        Interlock heard = interlock(INPUT, RAIL).next(read(AMPS, 0)).next(read(PLUS, 0));
        Interlock inrush = heard.next(enter(Phase.INRUSH)).next(read(AMPS, 5)).next(read(PLUS, 12));
        assertThat(inrush.permitted()).isTrue();
        nowMillis++;
        Interlock up = inrush.next(enter(Phase.UP));
        assertThat(up.permitted()).isTrue();
        nowMillis++;
        assertThat(up.next(read(PLUS, 12)).permitted()).isFalse();
    }

    @Test
    void aReadingIsJudgedByThePhaseInWhichItWasAskedFor() {
        Interlock inrush = interlock(INPUT).next(read(AMPS, 0)).next(enter(Phase.INRUSH));
        nowMillis++;
        long asked = nanos();
        nowMillis++;
        Interlock working = inrush.next(enter(Phase.WORKING));
        assertThat(working.next(new Event.Read(new Measured(AMPS, 5, asked, nanosAfter(5))))
                        .permitted())
                .isTrue();
        assertThat(working.next(read(AMPS, 5)).permitted()).isFalse();
    }

    @Test
    void aReadingThatWasUnderWayWhileTheUnitWasSwitchedOnMayBeWhatEitherPhaseAllows() {
        Interlock standby = interlock(INPUT).next(read(AMPS, 0)).next(enter(Phase.STANDBY));
        long asked = nanos();
        Interlock on = standby.next(enter(Phase.INRUSH));
        assertThat(on.next(new Event.Read(new Measured(AMPS, 1.352, asked, nanosAfter(300))))
                        .permitted())
                .isTrue();
        assertThat(on.next(new Event.Read(new Measured(AMPS, 7, asked, nanosAfter(300))))
                        .permitted())
                .as("more than either allows")
                .isFalse();
        assertThat(standby.next(new Event.Read(new Measured(AMPS, 1.352, asked, nanosAfter(300))))
                        .permitted())
                .as("answered before anything was switched on")
                .isFalse();
    }

    @Test
    void aTripLatchesAndTheFirstOneIsKept() {
        Interlock trip = up().next(read(AMPS, 30)).next(read(PLUS, 50)).next(read(AMPS, 1));
        assertThat(trip.permitted()).isFalse();
        assertThat(trip.trip().orElseThrow().words()).isEqualTo("input current is 30 A, allowed is at most 29 A");
        assertThat(trip.next(enter(Phase.OFF)).next(enter(Phase.UP)).permitted())
                .isFalse();
    }

    @Test
    void onlyAPersonsResetTakesATripBackAndAllMustBeHeardAnew() {
        Interlock reset = up().next(read(AMPS, 30)).next(new Event.Reset("M. Fairlead", nanos()));
        assertThat(reset.trip()).isEmpty();
        assertThat(reset.phase()).isEqualTo(Phase.OFF);
        assertThat(reset.permitted()).isFalse();
        assertThatThrownBy(() -> new Event.Reset(" ", 0)).hasMessageContaining("name of the person");
    }

    @Test
    void aPersonsStopTrips() {
        Interlock stopped = up().next(new Event.Stop("Escape key", "stopped by hand", nanos()));
        assertThat(stopped.trip().orElseThrow().kind()).isEqualTo(Trip.Kind.STOPPED);
    }

    @Test
    void aProgramThatSleptTripsAtItsFirstEventEvenWhenReadingsAreFresh() {
        Interlock up = up();
        nowMillis += 2500;
        Interlock woken = up.next(read(AMPS, 1));
        assertThat(woken.trip().orElseThrow().kind()).isEqualTo(Trip.Kind.STOOD_STILL);
    }

    @Test
    void imbalanceComparesMagnitudes() {
        Watch balance =
                Watch.of("imbalance", new Subject.Imbalance(PLUS, MINUS), Duration.ofSeconds(3), Limits.atMost(5));
        Interlock even = interlock(balance).next(read(PLUS, 36.7)).next(read(MINUS, -34));
        assertThat(even.permitted()).isTrue();
        assertThat(even.next(read(MINUS, -31)).permitted()).isFalse();
    }

    @Test
    void derivedValuesAreNotMixedAcrossAChange() {
        Interlock loaded = extraLoss().next(enter(Phase.UP));
        nowMillis++;
        Interlock stepped = loaded.next(new Event.Changed(nanos()));
        nowMillis++;
        // the load went from 4 A to 1 A; a mix of the old input current with the new rail current would read 110 W more
        assertThat(stepped.next(read(Channel.of("plus.current"), 1)).permitted())
                .isTrue();
    }

    @Test
    void extraLossIsInputLessOutputLessExpectation() {
        Interlock loaded = extraLoss().next(enter(Phase.UP));
        nowMillis++;
        assertThat(loaded.permitted()).isTrue();
        Trip trip = loaded.next(read(AMPS, 18)).trip().orElseThrow();
        // 13.8 V x 18 A - 36 V x 4 A - 5 W - 0.5 ohm x 16 A2 = 91.4 W
        assertThat(trip.words()).isEqualTo("extra loss is 91.4 W, allowed is at most 60 W");
    }

    @Test
    void withoutWatchesThereIsNoInterlock() {
        assertThatThrownBy(this::interlock).hasMessageContaining("at least one channel must be watched");
    }

    private Interlock extraLoss() {
        Channel volts = Channel.of("input.voltage");
        Channel out = Channel.of("plus.current");
        Subject loss = new Subject.ExtraLoss(volts, AMPS, List.of(new Subject.RailPair(PLUS, out)), 5, 0, 0.5);
        Interlock start = interlock(Watch.of("extra loss", loss, Duration.ofSeconds(3), Limits.atMost(60)));
        return start.next(read(volts, 13.8))
                .next(read(AMPS, 12))
                .next(read(PLUS, 36))
                .next(read(out, 4));
    }

    private Interlock up() {
        return interlock(INPUT, RAIL).next(read(AMPS, 1)).next(read(PLUS, 36)).next(enter(Phase.UP));
    }

    private Interlock interlock(Watch... watches) {
        return Interlock.of(List.of(watches), Duration.ofSeconds(2), nanos());
    }

    private Event read(Channel channel, double value) {
        return new Event.Read(new Measured(channel, value, nanos(), nanos()));
    }

    private Event enter(Phase phase) {
        return new Event.Enter(phase, nanos());
    }

    private Event tickAfter(long millis) {
        return new Event.Tick(nanosAfter(millis));
    }

    private long nanosAfter(long millis) {
        nowMillis += millis;
        return nanos();
    }

    private long nanos() {
        return nowMillis * 1_000_000;
    }
}
