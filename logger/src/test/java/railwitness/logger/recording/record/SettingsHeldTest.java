package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.LatestReadings;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;

/** Supplies, loads and meters that reset themselves, as what they read shows it. */
class SettingsHeldTest {
    private static final long SECOND = 1_000_000_000L;
    private static final SettingsHeld.SettingsHeldSheet SHEET = new SettingsHeld.SettingsHeldSheet(
            "supply",
            30,
            "the shunt's leads",
            0.05,
            Map.of("plus", 18.0, "minus", 18.0, "preamp", 6.0),
            Map.of("plus", 36.7, "minus", -36.7, "preamp", 12.0));

    private final LatestReadings latest = new LatestReadings();
    private final SettingsHeld held = new SettingsHeld(SHEET, latest);
    private long now = 10 * SECOND;

    SettingsHeldTest() {
        held.ordered(new SettingsHeld.Ordered(13.8, Map.of("plus", 2.0, "minus", 2.0), true, now));
    }

    private void reads(String instrument, String... readings) {
        List<Reading> all = java.util.Arrays.stream(readings)
                .map(one -> one.split("="))
                .<Reading>map(pair -> new Measured(Channel.of(pair[0]), Double.parseDouble(pair[1]), now, now))
                .toList();
        all.forEach(latest::heard);
        held.heard(new PollResult(instrument, all, Set.of()), false);
    }

    private void healthy() {
        reads("supply", "supply.voltage=13.80", "supply.current=12.1");
        reads("shunt", "input.current=12.0");
        reads("input meter", "input.voltage=13.55");
        reads("plus meter", "plus.voltage=38.2");
        reads("minus meter", "minus.voltage=-38.1");
        reads("plus ripple", "plus.ripple=0.031");
        reads("heat", "heatsink.temperature=41.0");
        reads("plus load", "plus.current=2.001");
        now += SECOND / 2;
    }

    private void rounds(int count, String instrument, String... readings) {
        for (int round = 0; round < count; round++) {
            reads(instrument, readings);
            now += SECOND / 2;
        }
    }

    @Test
    void aHealthyBenchIsNeverDoubted() {
        for (int round = 0; round < 100; round++) {
            healthy();
            assertThat(held.doubted()).isFalse();
        }
        assertThat(held.lost(now)).isEmpty();
    }

    @Test
    void aSupplyThatFellToFiveVoltsIsDoubtedAtOnceAndLostSoon() {
        healthy();
        reads("supply", "supply.voltage=5.0", "supply.current=0");
        assertThat(held.doubted()).isTrue();
        assertThat(held.lost(now)).isEmpty();
        rounds(6, "supply", "supply.voltage=5.0", "supply.current=0");
        assertThat(held.lost(now)).hasValueSatisfying(words -> assertThat(words)
                .contains("set to 13.80 V and gives 5.000 V", "supply has reset itself"));
    }

    /** One reading is no proof; it only keeps the step from being averaged. */
    @Test
    void aDoubtThatPassesIsOver() {
        healthy();
        reads("supply", "supply.voltage=5.0");
        healthy();
        assertThat(held.doubted()).isFalse();
    }

    @Test
    void aSupplyThatLimitsIsAnotherMatter() {
        for (int round = 0; round < 10; round++) {
            reads("supply", "supply.current=29.9", "supply.voltage=9.0");
            now += SECOND / 2;
        }
        assertThat(held.lost(now)).isEmpty();
    }

    @Test
    void anOutputThatNobodySwitchedOffIsToldAtOnce() {
        PollResult off = new PollResult("supply", List.of(), Set.of(Condition.OUTPUT_OFF));
        assertThat(held.switchedOff(off))
                .hasValueSatisfying(words -> assertThat(words).contains("nobody ordered"));
        held.ordered(SettingsHeld.Ordered.nothing());
        assertThat(held.switchedOff(off)).isEmpty();
    }

    @Test
    void aLoadThatDropsItsCurrentIsLost() {
        healthy();
        rounds(6, "plus load", "plus.current=0.000");
        assertThat(held.lost(now)).hasValueSatisfying(words -> assertThat(words)
                .contains("load of the plus rail was set to 2.000 A and draws 0.000 A"));
    }

    @Test
    void aShuntMeterThatFellToVoltsPartsFromTheSupply() {
        healthy();
        rounds(6, "shunt", "input.current=0.012");
        assertThat(held.lost(now)).hasValueSatisfying(words -> assertThat(words)
                .contains("input current reads 0.0120 A while the supply gives 12.1 A"));
    }

    /** A shunt that was written down wrong never agreed: the findings say so, the run goes on. */
    @Test
    void aMeterThatNeverAgreedIsNotAccusedOfHavingChanged() {
        for (int round = 0; round < 20; round++) {
            reads("supply", "supply.voltage=13.80", "supply.current=12.1");
            rounds(1, "shunt", "input.current=1.2");
        }
        assertThat(held.doubted()).isFalse();
    }

    @Test
    void leadsThatAreReversedInMidRunAreNamed() {
        healthy();
        rounds(6, "shunt", "input.current=-12.0");
        assertThat(held.lost(now))
                .hasValueSatisfying(words -> assertThat(words).contains("the shunt's leads are reversed"));
    }

    @Test
    void railMeterRippleMeterAndSensorThatFellBackAreSeen() {
        for (String fallen : List.of(
                "plus.voltage=0.021",
                "plus.voltage=-38.2",
                "plus.ripple=38.2",
                "heatsink.temperature=0.3",
                "input.voltage=-13.5",
                "input.voltage=0.0135")) {
            SettingsHeldTest fresh = new SettingsHeldTest();
            for (int round = 0; round < 4; round++) {
                fresh.healthy();
            }
            fresh.rounds(6, "meter", fallen);
            assertThat(fresh.held.lost(fresh.now)).as(fallen).isPresent();
        }
    }

    @Test
    void readingsOfBeforeTheSettingSayNothing() {
        held.ordered(new SettingsHeld.Ordered(11, Map.of(), true, now + 5 * SECOND));
        rounds(6, "supply", "supply.voltage=13.8");
        assertThat(held.doubted()).isFalse();
    }

    /** A rail of 12 V beside two of 36.7 V is judged by its own bound, and so are they. */
    @Test
    void eachRailHasItsOwnBoundBelowWhichItIsDown() {
        healthy();
        rounds(8, "preamp meter", "preamp.voltage=11.7");
        assertThat(held.doubted()).isFalse();
        rounds(8, "plus meter", "plus.voltage=11.7");
        assertThat(held.lost(now))
                .hasValueSatisfying(words -> assertThat(words).contains("the plus rail reads 11.7 V"));
    }
}
