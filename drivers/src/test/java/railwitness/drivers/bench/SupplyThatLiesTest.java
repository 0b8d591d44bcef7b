package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Peer;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;

/** What a supply says of itself is held against what it reads, and one reply against the others of its round. */
class SupplyThatLiesTest {
    private static final String BENCH = """
            [bench]
            name = "slipway"
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "S"
            """;

    private final DeafPeer peer = new DeafPeer("Workshop,S-0,1,1.0")
            .answers("OUTP?", "1")
            .answers("MEAS:VOLT?", "12.00")
            .answers("MEAS:CURR?", "4.00")
            .answers("VOLT:PROT?", "15.00")
            .answers("STAT:QUES:COND?", "0");
    private final TestBench bed = new TestBench();

    private Supply open(Peer far) {
        bed.deaf("S", far);
        return bed.open(BENCH).supply().instrument();
    }

    /** Its register never says that it limits; four amperes of four, at two volts less than it was set to, say it. */
    @Test
    void aRegisterThatNeverSaysLimitingIsNotBelieved() {
        Supply supply = open(peer);
        supply.setVolts(13.8);
        supply.setCurrentLimit(4);
        assertThat(supply.poll().conditions()).isEqualTo(Set.of(Condition.LIMITING));
        supply.setCurrentLimit(6);
        assertThat(supply.poll().conditions()).isEmpty();
    }

    /** Each question is answered by the answer of the one before: every number is likely, and none is its own. */
    @Test
    void noReadingOfARoundCountsWhenOneReplyBelongsToAnotherQuestion() {
        OneBehind behind = new OneBehind(peer);
        Supply supply = open(behind);
        assertThat(supply.poll().readings()).allMatch(Measured.class::isInstance);
        behind.begins = true;
        for (int round = 0; round < 5; round++) {
            assertThat(supply.poll().readings()).allMatch(Missing.class::isInstance);
        }
        behind.begins = false;
        supply.poll();
        assertThat(supply.poll().readings()).allMatch(Measured.class::isInstance);
    }

    /** The protection stands between a mistake and the unit: it is read back in its turn like what is set. */
    @Test
    void aProtectionTurnedUpByHandIsNoticed() {
        Supply supply = open(peer);
        supply.setOverVoltageProtection(15);
        assertThat(supply.overVoltageProtectionSetting()).isEqualTo(15);
        rounds(supply);
        assertThat(supply.settingChanged()).isEmpty();
        peer.answers("VOLT:PROT?", "60.00");
        rounds(supply);
        assertThat(supply.settingChanged()).hasValueSatisfying(words -> assertThat(words)
                .startsWith("its over-voltage protection was set to 15.00 V and reads back 60.00 V now"));
    }

    private void rounds(Supply supply) {
        for (int round = 0; round < 10; round++) {
            bed.scheduler.spend(Duration.ofSeconds(1));
            supply.poll();
        }
    }

    /** From some moment on it answers each question with what it had to say to the one before. */
    private static final class OneBehind implements Peer {
        private final Peer own;
        private Answer before;
        private boolean begins;

        OneBehind(Peer own) {
            this.own = own;
        }

        @Override
        public Answer hear(String message) {
            Answer answer = own.hear(message);
            Answer said = begins && before != null ? before : answer;
            before = answer;
            return said;
        }
    }
}
