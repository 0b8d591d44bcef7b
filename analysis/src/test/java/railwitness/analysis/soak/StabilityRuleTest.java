package railwitness.analysis.soak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Stability rules by name of standard, limits as quoted in public discussion of the standards. */
class StabilityRuleTest {
    private static final double[] TWO_HOURS =
            IntStream.rangeClosed(0, 720).mapToDouble(i -> i * 10).toArray();

    private static double[] rising(double kelvinPerHour) {
        return IntStream.rangeClosed(0, 720)
                .mapToDouble(i -> 60 + kelvinPerHour * i * 10 / 3600)
                .toArray();
    }

    private static boolean steady(StabilityRule rule, double kelvinPerHour) {
        return rule.at(TWO_HOURS, rising(kelvinPerHour)).steady();
    }

    private static void allows(StabilityRule rule, double kelvinPerHour) {
        assertThat(steady(rule, kelvinPerHour * 0.98)).as("%s just below", rule).isTrue();
        assertThat(steady(rule, kelvinPerHour * 1.02)).as("%s just above", rule).isFalse();
    }

    @Test
    void eachRuleDrawsItsOwnLine() {
        allows(StabilityRule.IEC_60034_1, 2);
        allows(StabilityRule.IEC_61010_1, 2);
        allows(StabilityRule.IEC_62368_1, 6);
        allows(StabilityRule.IEC_62368_1_BELOW_LIMIT, 12);
        allows(StabilityRule.IEC_61810_7, 6);
        allows(StabilityRule.IEC_60598, 1);
        allows(StabilityRule.IEC_62282_2, 12);
        allows(StabilityRule.IEEE_2780, 8);
    }

    @Test
    void rulesDisagreeAboutTheSameRecord() {
        assertThat(steady(StabilityRule.IEC_62368_1, 5)).isTrue();
        assertThat(steady(StabilityRule.IEC_61010_1, 5)).isFalse();
    }

    @Test
    void shortRecordIsNotSteady() {
        Stability short_ = StabilityRule.IEC_61010_1.at(new double[] {0, 600}, new double[] {60, 60});
        assertThat(short_.steady()).isFalse();
        assertThat(short_.moved()).isEmpty();
        assertThat(short_.reason()).isEqualTo("record of 600 s, the rule needs 3600 s");
    }

    @Test
    void shortRuleNeedsRoomBelowTheLimit() {
        StabilityRule rule = StabilityRule.IEC_62368_1_BELOW_LIMIT;
        assertThat(rule.belowLimit(TWO_HOURS, rising(1), 90).steady()).isTrue();
        assertThat(rule.belowLimit(TWO_HOURS, rising(1), 65).steady()).isFalse();
    }

    /** 40 K with a time constant of 20 min: 2 K in the last hour once 40 (e^3 - 1) e^(-t/tau) = 2, t = 119 min. */
    @Test
    void firstTimeItIsMetIsFound() {
        double[] seconds =
                IntStream.rangeClosed(0, 1800).mapToDouble(i -> i * 10).toArray();
        double[] celsius = IntStream.rangeClosed(0, 1800)
                .mapToDouble(i -> 65 - 40 * Math.exp(-i * 10 / 1200.0))
                .toArray();
        double expected = 1200 * Math.log(40 * (Math.exp(3) - 1) / 2);
        assertThat(StabilityRule.IEC_61010_1.firstMet(seconds, celsius).orElseThrow())
                .isCloseTo(expected, within(60.0));
        assertThat(StabilityRule.IEC_61010_1.firstMet(TWO_HOURS, rising(5))).isEmpty();
    }
}
