package railwitness.logger.ui.screen.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ReachTest {
    private static final double DAY = 86_400;

    @Test
    void momentUnderThePointerStaysWhereItIs() {
        Reach near = Reach.all(DAY).zoomed(0.5, 0.25 * DAY).zoomed(0.5, 0.25 * DAY);
        assertThat(near.length()).isEqualTo(DAY / 4);
        assertThat((0.25 * DAY - near.from()) / near.length()).isCloseTo(0.25, within(1e-12));
    }

    @Test
    void nothingBeforeTheBeginningOrAfterTheEndIsSeen() {
        Random random = new Random(4);
        Reach reach = Reach.all(DAY);
        for (int i = 0; i < 10_000; i++) {
            reach = switch (random.nextInt(3)) {
                case 0 -> reach.zoomed(random.nextBoolean() ? 0.5 : 2, DAY * random.nextDouble());
                case 1 -> reach.moved(random.nextGaussian());
                default -> reach.around(2 * DAY * random.nextGaussian());
            };
            assertThat(reach.from()).isGreaterThanOrEqualTo(0);
            assertThat(reach.to()).isLessThanOrEqualTo(DAY * (1 + 1e-12));
            assertThat(reach.length()).isBetween(Reach.LEAST * (1 - 1e-6), DAY);
        }
    }

    @Test
    void fromThreeDaysToOneReadingInAFewSteps() {
        Reach reach = Reach.all(3 * DAY);
        int steps = 0;
        while (reach.length() > 0.02) {
            reach = reach.zoomed(0.5, DAY);
            steps++;
        }
        assertThat(steps).isEqualTo(24);
        assertThat(reach.isAll()).isFalse();
    }

    @Test
    void farEnoughOutIsAllOfIt() {
        assertThat(Reach.all(10).zoomed(0.5, 3).zoomed(8, 3).isAll()).isTrue();
    }
}
