package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.record.LeadFinding.Outcome;
import railwitness.logger.recording.sheet.Sheets;

/** Leads of the demo's bench. Its meters state 0.004 % of a range of 100 V, or of 0.1 V on the shunt of 1 mohm. */
class LeadCheckTest {
    private static final Sheets DEMO = Sheets.demo();

    private static LeadCheck check(String... changes) {
        String text = DEMO.bench().text();
        for (int i = 0; i < changes.length; i += 2) {
            assertThat(text).contains(changes[i]);
            text = text.replace(changes[i], changes[i + 1]);
        }
        return LeadCheck.of(new Sheets(DEMO.design(), Sheets.bench("bench.toml", text), DEMO.plan()));
    }

    private static LeadFinding zero(LeadCheck check, String meter, Double... values) {
        return check.shortings().stream()
                .filter(one -> one.instrument().equals(meter))
                .map(one -> check.zero(one, List.of(values)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void metersOfVoltageCanBeShortedAlsoOnAShuntOrForRipple() {
        assertThat(check().shortings())
                .extracting(LeadCheck.Shorting::instrument)
                .containsExactly(
                        "input meter",
                        "input shunt meter",
                        "plus meter",
                        "minus meter",
                        "plus ripple meter",
                        "minus ripple meter");
    }

    @Test
    void zeroWithinTheStatedOffsetIsGood() {
        LeadFinding found = zero(check(), "plus meter", 0.002, 0.003, 0.004);
        assertThat(found.outcome()).isEqualTo(Outcome.GOOD);
        assertThat(found.seen()).isCloseTo(0.003, within(1e-12));
        assertThat(found.allowed().orElseThrow()).isCloseTo(0.004, within(1e-12));
    }

    @Test
    void zeroBeyondTheStatedOffsetIsNamedOnEitherSide() {
        assertThat(zero(check(), "plus meter", 0.005).outcome()).isEqualTo(Outcome.BEYOND);
        assertThat(zero(check(), "plus meter", -0.005).outcome()).isEqualTo(Outcome.BEYOND);
    }

    /** 3 mA is 3 uV on 1 mohm; 0.004 % of 0.1 V is 4 uV. */
    @Test
    void meterOnAShuntIsJudgedByTheVoltageItMeasures() {
        LeadFinding found = zero(check(), "input shunt meter", 0.003);
        assertThat(found.seen()).isCloseTo(3e-6, within(1e-15));
        assertThat(found.allowed().orElseThrow()).isCloseTo(4e-6, within(1e-15));
        assertThat(found.outcome()).isEqualTo(Outcome.GOOD);
        assertThat(zero(check(), "input shunt meter", 0.005).outcome()).isEqualTo(Outcome.BEYOND);
    }

    @Test
    void meterWithoutAStatedOffsetIsNotJudged() {
        LeadCheck unknown = check(
                "reads = \"plus.voltage\"\nrange = 100\nplc = 1\ncalibrated = 2026-05-11\n"
                        + "accuracy.voltage = { reading_pct = 0.015, range_pct = 0.004, stated_as = \"limit\" }",
                "reads = \"plus.voltage\"");
        assertThat(zero(unknown, "plus meter", 3.0).outcome()).isEqualTo(Outcome.NOT_JUDGED);
    }

    /** A share of a range that the meter chooses by itself cannot be told. */
    @Test
    void meterThatChoosesItsRangeIsNotJudgedByAShareOfIt() {
        LeadCheck own = check("reads = \"plus.voltage\"\nrange = 100\n", "reads = \"plus.voltage\"\n");
        assertThat(zero(own, "plus meter", 0.003).outcome()).isEqualTo(Outcome.NOT_JUDGED);
    }

    @Test
    void meterReadByHandCanBeShortedToo() {
        LeadCheck hand = check(
                "[[instrument]]\nname = \"plus load\"",
                "[[hand_read]]\nname = \"old one\"\nreads = \"input.power\"\n"
                        + "[[hand_read]]\nname = \"meter in hand\"\nreads = \"aux.voltage\"\nrange = 20\n"
                        + "accuracy = { digits = 2, resolution = 0.01 }\n[[instrument]]\nname = \"plus load\"");
        assertThat(hand.shortings()).filteredOn(LeadCheck.Shorting::byHand).hasSize(1);
        assertThat(zero(hand, "meter in hand", 0.01).outcome()).isEqualTo(Outcome.GOOD);
        assertThat(zero(hand, "meter in hand", 0.03).outcome()).isEqualTo(Outcome.BEYOND);
    }

    /** The demo's touch limit is 5 V. */
    @Test
    void railAtRestMustBeBelowTheTouchLimit() {
        Channel minus = Channel.of("minus.voltage");
        assertThat(check().rails()).containsExactly(Channel.of("plus.voltage"), minus);
        assertThat(check().atRest(minus, -4.9).outcome()).isEqualTo(Outcome.GOOD);
        assertThat(check().atRest(minus, -5.1).outcome()).isEqualTo(Outcome.BEYOND);
        assertThat(check().atRest(minus, -5.1).allowed()).hasValue(5);
    }

    /** The supply may be 10 mV off, the meter 4 mV. */
    @Test
    void inputMustReadWhatTheSupplyReadsBack() {
        LeadFinding good = check().input(0.009, -0.002).orElseThrow();
        assertThat(good.outcome()).isEqualTo(Outcome.GOOD);
        assertThat(good.against()).hasValue(0.009);
        assertThat(check().input(0.0, 0.030).orElseThrow().outcome()).isEqualTo(Outcome.BEYOND);
    }

    @Test
    void voltageAtTheInputOfASupplyThatIsOffIsBeyondEvenIfBothAgree() {
        assertThat(check().input(12.7, 12.7).orElseThrow().outcome()).isEqualTo(Outcome.BEYOND);
        assertThat(check("source = \"supply\"", "source = \"supply with battery\"")
                        .input(12.7, 12.7)
                        .orElseThrow()
                        .outcome())
                .isEqualTo(Outcome.GOOD);
    }

    @Test
    void terminalsThatTheWiringJoinsAreNamed() {
        assertThat(check().joined()).anyMatch(text -> text.contains("input shunt meter"));
    }
}
