package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.reading.Measured;

/** What an instrument does not know costs only that. */
class OptionalQuestionsTest {
    private static final String SUPPLY = """
            [bench]
            name = "slipway"
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "S"
            """;
    private static final String LOAD = """
            [[instrument]]
            name = "load"
            kind = "load"
            port = "L"
            rail = "plus"
            """;
    private static final String METER = """
            [[instrument]]
            name = "volts"
            kind = "meter"
            port = "M"
            reads = "plus.voltage"
            plc = 1
            """;

    private final TestBench bed = new TestBench().peer("S", new ScriptedPeer("Workshop,S-1,1,1.0"));

    /** Knows OUTP and MEAS, and has no error queue. */
    private static DeafPeer bareSupply() {
        return new DeafPeer("Workshop,S-0,1,1.0")
                .answers("OUTP?", "0")
                .answers("MEAS:VOLT?", "12.00")
                .answers("MEAS:CURR?", "4.00");
    }

    private Bench openWith(String port, DeafPeer peer, String toml) {
        bed.deaf(port, peer);
        return bed.open(toml);
    }

    @Test
    void whatASupplyDoesNotKnowIsSaidWithWhatIsLost() {
        Supply supply = openWith("S", bareSupply(), SUPPLY).supply().instrument();
        assertThat(supply.lacks()).hasSize(6).anySatisfy(words -> assertThat(words)
                .isEqualTo("'STAT:QUES:COND?' is not answered: whether it limits its current is judged from its own"
                        + " readings; that its protection tripped shows only in its output going off"));
        assertThat(supply.lacks())
                .anyMatch(words -> words.startsWith("'SYST:ERR?' is not answered: a setting that is refused"));
        assertThat(supply.hasOverVoltageProtection()).isFalse();
        assertThat(supply.hasOverCurrentProtection()).isFalse();
    }

    @Test
    void itIsNotAskedForTheseAgainAndItsReadingsStayFresh() {
        DeafPeer peer = bareSupply();
        Supply supply = openWith("S", peer, SUPPLY).supply().instrument();
        peer.heard().clear();
        long begun = bed.scheduler.nowNanos();
        assertThat(supply.poll().readings()).allMatch(Measured.class::isInstance);
        assertThat(bed.scheduler.nowNanos() - begun).isLessThan(100_000_000L);
        assertThat(peer.heard()).containsExactly("MEAS:VOLT?", "MEAS:CURR?", "OUTP?");
    }

    @Test
    void whatItWasSetToIsWhatWasSent() {
        Supply supply = openWith("S", bareSupply(), SUPPLY).supply().instrument();
        supply.setVolts(13.8);
        supply.setCurrentLimit(5);
        assertThat(supply.voltsSetting()).isEqualTo(13.8);
        assertThat(supply.currentLimitSetting()).isEqualTo(5);
    }

    @Test
    void thatItLimitsIsSeenInItsReadings() {
        Supply supply = openWith("S", bareSupply().answers("OUTP?", "1"), SUPPLY)
                .supply()
                .instrument();
        supply.setVolts(13.8);
        supply.setCurrentLimit(4);
        assertThat(supply.poll().conditions()).isEqualTo(Set.of(Condition.LIMITING));
        supply.setCurrentLimit(5);
        assertThat(supply.poll().conditions()).isEmpty();
        supply.setCurrentLimit(4);
        supply.setVolts(12.05);
        assertThat(supply.poll().conditions()).isEmpty();
    }

    @Test
    void aSupplyThatDoesNotReadItsCurrentIsNamedWithWhatToDo() {
        bed.deaf("S", new DeafPeer("Workshop,S-0,1,1.0").answers("OUTP?", "0").answers("MEAS:VOLT?", "0"));
        assertThatThrownBy(() -> bed.open(SUPPLY))
                .isInstanceOfSatisfying(
                        LineException.class, e -> assertThat(e.trouble()).isEqualTo(Trouble.WRONG_INSTRUMENT))
                .hasMessageStartingWith(
                        "supply on S: it says who it is, but does not answer 'MEAS:CURR?', and without a"
                                + " reading of its current there is no run;")
                .hasMessageContaining("dialect = \"mine.toml\"");
    }

    @Test
    void aSupplyThatDoesNotSayWhetherItIsOnIsNamedWithWhatToDo() {
        bed.deaf("S", new DeafPeer("Workshop,S-0,1,1.0"));
        assertThatThrownBy(() -> bed.open(SUPPLY))
                .hasMessageStartingWith("supply on S: no answer to 'OUTP?'")
                .hasMessageContaining("without this answer there is no run");
    }

    @Test
    void aLoadWithoutInputCommandIsSwitchedByItsOutput() {
        DeafPeer load = new DeafPeer("Workshop,L-0,1,1.0")
                .answers("OUTP?", "0")
                .answers("CURR?", "2")
                .answers("MEAS:CURR?", "1.5");
        bed.deaf("L", load);
        bed.deaf("S", bareSupply());
        var found = bed.open(SUPPLY + LOAD).loads().get("plus").instrument();
        found.setAmps(2);
        found.inputOn();
        assertThat(load.heard()).contains("OUTP ON").doesNotContain("INP ON");
        assertThat(new String(found.offBytes())).isEqualTo("\nOUTP OFF\n");
        assertThat(found.poll().conditions()).isEqualTo(Set.of(Condition.NOT_HOLDING));
        load.answers("MEAS:CURR?", "2.01");
        assertThat(found.poll().conditions()).isEmpty();
    }

    @Test
    void aMeterWithoutErrorQueueNeedsItsReadingAlone() {
        bed.deaf("S", bareSupply());
        bed.deaf("M", new DeafPeer("Workshop,M-0,1,1.0").answers("READ?", "36.5"));
        Instrument meter = bed.open(SUPPLY + METER).meters().get(0).instrument();
        assertThat(meter.lacks()).hasSize(1);
        assertThat(((Measured) meter.poll().readings().get(0)).value()).isEqualTo(36.5);
    }

    @Test
    void aQuestionThatFallsSilentLaterIsLeftOutToo() {
        DeafPeer peer = bareSupply().answers("STAT:QUES:COND?", "0");
        Supply supply = openWith("S", peer, SUPPLY).supply().instrument();
        peer.answers("STAT:QUES:COND?", null);
        for (int i = 0; i < 3; i++) {
            supply.poll();
        }
        long begun = bed.scheduler.nowNanos();
        assertThat(supply.poll().readings()).allMatch(Measured.class::isInstance);
        assertThat(bed.scheduler.nowNanos() - begun).isLessThan(100_000_000L);
        assertThat(supply.lacks()).anyMatch(words -> words.startsWith("'STAT:QUES:COND?'"));
    }

    @Test
    void aReplyThatCannotBeAStateIsNone() {
        DeafPeer peer = bareSupply().answers("STAT:QUES:COND?", "1");
        Supply supply = openWith("S", peer, SUPPLY).supply().instrument();
        assertThat(supply.poll().conditions()).contains(Condition.LIMITING);
        peer.answers("STAT:QUES:COND?", "0.0002");
        assertThat(supply.poll().conditions()).as("those known before").contains(Condition.LIMITING);
    }

    @Test
    void aReadingBeyondAllMeasureIsNone() {
        DeafPeer peer = bareSupply().answers("MEAS:CURR?", "129000");
        Supply supply = openWith("S", peer, SUPPLY).supply().instrument();
        assertThat(List.of(supply.poll().readings().get(1))).noneMatch(Measured.class::isInstance);
    }
}
