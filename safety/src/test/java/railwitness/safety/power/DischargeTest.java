package railwitness.safety.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

class DischargeTest {
    private static final Channel PLUS = Channel.of("plus.voltage");
    private static final Channel MINUS = Channel.of("minus.voltage");
    private static final Rails RAILS = new Rails(List.of(PLUS, MINUS), List.of(), 5);

    private final Discharge discharge = new Discharge(RAILS, 0);

    @Test
    void unseenRailsCountAsCharged() {
        assertThat(discharge.belowHazard()).isFalse();
        assertThat(discharge.belowTouch()).isFalse();
        hear(PLUS, 0, 0);
        assertThat(discharge.words()).contains("take them as charged");
    }

    @Test
    void sixtyVoltsBetweenTheRailsIsTheHazard() {
        // rails of plus and minus 30 V reach 60 V between them (IEC 62368-1 ES1, from memory)
        hear(PLUS, 0, 30);
        hear(MINUS, 0, -30);
        assertThat(discharge.belowHazard()).isFalse();
        hear(MINUS, 1, -29.9);
        assertThat(discharge.belowHazard()).isTrue();
        assertThat(discharge.belowTouch()).isFalse();
    }

    @Test
    void readingsFromBeforePowerWentOffDoNotCount() {
        Discharge later = new Discharge(RAILS, 2_000_000_000L);
        later.heard(new Measured(PLUS, 0, 1_000_000_000L, 1_000_000_000L));
        assertThat(later.allSeen()).isFalse();
    }

    /* V = V0 exp(-t / RC): 4400 uF on 3300 ohm is 14.52 s; 42 V reach 5 V after 14.52 ln(42 / 5) = 30.9 s. */
    @Test
    void timeLeftIsThatOfACapacitorOnAResistor() {
        for (double t = 0; t <= 3; t += 0.5) {
            hear(PLUS, t, 42 * Math.exp(-t / 14.52));
            hear(MINUS, t, -42 * Math.exp(-t / 14.52));
        }
        assertThat(discharge.secondsLeft(MINUS).orElseThrow()).isCloseTo(30.9 - 3, within(0.1));
        assertThat(discharge.notFalling()).isEmpty();
        assertThat(discharge.words()).matches("rails still at 68\\.\\d V between them; about 28 s .*");
    }

    @Test
    void timeLeftHoldsForAnyCapacitorAndResistor() {
        long seed = 4;
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            Discharge one = new Discharge(RAILS, 0);
            double rc = 1 + 60 * random.nextDouble();
            double start = 10 + 60 * random.nextDouble();
            double last = 0;
            for (int n = 0; n < 6; n++) {
                last += 0.2 + random.nextDouble();
                one.heard(new Measured(PLUS, start * Math.exp(-last / rc), (long) (last * 1e9), (long) (last * 1e9)));
            }
            double expected = Math.max(0, rc * Math.log(start / 5) - last);
            assertThat(one.secondsLeft(PLUS).orElseThrow())
                    .as("seed %d case %d", seed, i)
                    .isCloseTo(expected, within(0.01));
        }
    }

    @Test
    void aRailThatStandsIsNamedOnceThereIsEnoughToSay() {
        for (double t = 0; t <= 4; t += 1) {
            hear(PLUS, t, 2);
            hear(MINUS, t, -31);
            assertThat(discharge.notFalling().isEmpty()).isEqualTo(t < 3);
        }
        assertThat(discharge.over(4_000_000_000L)).isTrue();
        assertThat(discharge.words()).contains("minus stays at -31.0 V and does not fall");
    }

    @Test
    void aRailThatIsNotReadIsNotWaitedForButCountsAsCharged() {
        for (double t = 0; t <= 6; t += 1) {
            hear(PLUS, t, 1);
        }
        assertThat(discharge.over(4_900_000_000L)).isFalse();
        assertThat(discharge.over(5_000_000_000L)).isTrue();
        assertThat(discharge.belowTouch()).isFalse();
    }

    private void hear(Channel channel, double seconds, double volts) {
        long nanos = Math.round(seconds * 1e9);
        discharge.heard(new Measured(channel, volts, nanos, nanos));
    }
}
