package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.plan.Timing;

/** Meters that stop measuring and go on answering. */
class FrozenReadingsTest {
    private final FrozenReadings frozen = new FrozenReadings(Map.of("plus", 4.0, "minus", 4.0), false);

    private static Step step(String name, double volts, double amps) {
        return new Step(
                "load-sweep",
                name,
                volts,
                Map.of("plus", amps, "minus", amps),
                true,
                new Timing(Duration.ofSeconds(8), Duration.ofSeconds(5)),
                Duration.ZERO,
                false);
    }

    private void reads(FrozenReadings by, String channel, double... values) {
        for (double value : values) {
            by.heard(new Measured(Channel.of(channel), value, 0, 0));
        }
    }

    @Test
    void anInputCurrentThatIgnoresTheLoadIsFrozen() {
        reads(frozen, "input.current", 0.4, 0.4);
        assertThat(frozen.over(step("0 %", 13.8, 0))).isEmpty();
        frozen.begin();
        reads(frozen, "input.current", 0.4, 0.4);
        assertThat(frozen.over(step("25 %", 13.8, 1))).hasValueSatisfying(words -> assertThat(words)
                .contains("input.current", "0.4", "load-sweep 0 %", "stopped measuring"));
    }

    /** An ideal unit, or a coarse meter, shows the same number all the time at one load. */
    @Test
    void standingStillWithinAStepOrWithoutAChangeIsNoSign() {
        for (int time = 0; time < 5; time++) {
            frozen.begin();
            reads(frozen, "input.current", 0.4, 0.4, 0.4);
            reads(frozen, "plus.voltage", 40.7, 40.7, 40.7);
            assertThat(frozen.over(step("0 %", 13.8, 0))).isEmpty();
        }
    }

    @Test
    void aRailThatIgnoresTheInputIsFrozenUnlessItIsRegulated() {
        FrozenReadings regulated = new FrozenReadings(Map.of("plus", 4.0), true);
        for (FrozenReadings each : new FrozenReadings[] {frozen, regulated}) {
            reads(each, "plus.voltage", 32.1);
            assertThat(each.over(step("11 V", 11, 2))).isEmpty();
            each.begin();
            reads(each, "plus.voltage", 32.1);
            assertThat(each.over(step("12.5 V", 12.5, 2)).isPresent()).isEqualTo(each == frozen);
        }
    }

    /** Rails without any sag are those of an ideal unit; where one sags and the other stands, the other is frozen. */
    @Test
    void aRailThatIgnoresItsLoadIsFrozenWhereTheOtherMoves() {
        reads(frozen, "plus.voltage", 40.7);
        reads(frozen, "minus.voltage", -40.7);
        assertThat(frozen.over(step("25 %", 13.8, 1))).isEmpty();
        frozen.begin();
        reads(frozen, "plus.voltage", 40.7);
        reads(frozen, "minus.voltage", -40.7);
        assertThat(frozen.over(step("50 %", 13.8, 2))).isEmpty();
        frozen.begin();
        reads(frozen, "plus.voltage", 40.7);
        reads(frozen, "minus.voltage", -38.9);
        assertThat(frozen.over(step("75 %", 13.8, 3)))
                .hasValueSatisfying(words -> assertThat(words).contains("plus.voltage"));
    }

    @Test
    void aMeterThatMovesInItsLastDigitMeasures() {
        reads(frozen, "input.current", 0.400, 0.401);
        assertThat(frozen.over(step("0 %", 13.8, 0))).isEmpty();
        frozen.begin();
        reads(frozen, "input.current", 0.400, 0.401);
        assertThat(frozen.over(step("25 %", 13.8, 1))).isEmpty();
    }

    /** It measured when the last step began and stopped in it: the number that it goes on giving is the last. */
    @Test
    void aMeterThatStopsInTheMiddleOfAStepIsFrozenInTheNext() {
        reads(frozen, "input.current", 0.401, 0.399, 0.400);
        assertThat(frozen.over(step("0 %", 13.8, 0))).isEmpty();
        frozen.begin();
        reads(frozen, "input.current", 0.400, 0.400);
        assertThat(frozen.over(step("25 %", 13.8, 1))).isPresent();
    }
}
