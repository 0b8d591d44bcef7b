package railwitness.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The settling rule on records of known shape. */
class SettlingTest {

    @Test
    void constantReadingsAreSettledAsSoonAsTheWindowIsFull() {
        Settling settling = new Settling(SettlingRule.overLast(2));
        for (int i = 0; i < 20; i++) {
            settling.add(100 + i * 0.2, 35.01);
        }
        assertThat(settling.settled()).isTrue();
        assertThat(settling.secondsToSettle().orElseThrow()).isCloseTo(2, within(0.21));
    }

    @Test
    void nothingIsSettledBeforeTheWindowIsFull() {
        Settling settling = new Settling(SettlingRule.overLast(10));
        for (int i = 0; i < 50; i++) {
            settling.add(i * 0.1, 0);
        }
        assertThat(settling.settled()).isFalse();
        assertThat(settling.secondsToSettle()).isEmpty();
    }

    @Test
    void slowMeterIsGivenItsLeastReadings() {
        Settling settling = new Settling(SettlingRule.overLast(2));
        for (int i = 0; i < 7; i++) {
            settling.add(i * 3, 5);
        }
        assertThat(settling.settled()).isFalse();
        settling.add(21, 5);
        assertThat(settling.settled()).isTrue();
    }

    /** 35 V reached from 30 V with a time constant of 1 s: 0.01 % of 35 V over 2 s is left after some 7 s. */
    @Test
    void noiselessApproachSettlesWhenItMovesTooLittleToMatter() {
        Settling settling = new Settling(SettlingRule.overLast(2));
        for (int i = 0; i < 300; i++) {
            settling.add(i * 0.05, 35 - 5 * Math.exp(-i * 0.05));
        }
        assertThat(settling.secondsToSettle().orElseThrow()).isBetween(8.0, 10.5);
    }

    @Test
    void lastDigitThatFlickersIsAtRest() {
        Settling settling = new Settling(new SettlingRule(5, 8, 0));
        int[] digits = {1, 1, 2, 1, 1, 1, 2, 1, 1, 1, 1, 2, 1, 1, 1, 1, 2, 1, 1, 1, 1};
        for (int i = 0; i < digits.length; i++) {
            settling.add(i * 0.25, 35 + digits[i] * 0.01);
        }
        assertThat(settling.settled()).isTrue();
    }

    @Test
    void stepDuringTheWindowUnsettles() {
        Settling settling = new Settling(SettlingRule.overLast(2));
        for (int i = 0; i < 40; i++) {
            settling.add(i * 0.1, i < 30 ? 35 : 34);
        }
        assertThat(settling.settled()).isFalse();
        assertThat(settling.secondsToSettle()).isPresent();
    }

    @Test
    void ruleIsNamed() {
        assertThat(SettlingRule.overLast(5).words())
                .isEqualTo("slope not distinguishable from zero (10 % two-sided, last 5.00 s, 8 readings or more)"
                        + " or below 0.0100 % over that time");
    }

    @Test
    void timeMustNotRunBackwards() {
        Settling settling = new Settling(SettlingRule.overLast(5));
        settling.add(2, 1);
        assertThatThrownBy(() -> settling.add(1, 1)).hasMessageContaining("must not lie before the last one, 2.0 s");
    }
}
