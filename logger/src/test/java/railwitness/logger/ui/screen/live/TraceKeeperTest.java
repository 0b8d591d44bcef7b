package railwitness.logger.ui.screen.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import railwitness.logger.ui.screen.trace.TraceColumns;

class TraceKeeperTest {
    @Test
    void spikeIsKeptThroughThreeDays() {
        TraceKeeper keeper = new TraceKeeper();
        double end = 72 * 3600;
        for (double at = 0; at < end; at += 0.5) {
            keeper.add(at, at == 40_000 ? 99 : 37);
        }
        assertThat(highest(keeper.columns(0, end, 500))).isEqualTo(99);
    }

    @Test
    void everyColumnHoldsTheExtremesOfItsReadings() {
        long seed = System.nanoTime();
        Random random = new Random(seed);
        TraceKeeper keeper = new TraceKeeper();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 50_000; i++) {
            double value = random.nextGaussian();
            low = Math.min(low, value);
            high = Math.max(high, value);
            keeper.add(i * 0.02, value);
        }
        TraceColumns columns = keeper.columns(0, 1000, 300);
        assertThat(highest(columns)).as("seed %d", seed).isEqualTo((float) high);
        assertThat(lowest(columns)).as("seed %d", seed).isEqualTo((float) low);
    }

    @Test
    void columnsBeyondTheReadingsAreEmpty() {
        TraceKeeper keeper = new TraceKeeper();
        keeper.add(1, 5);
        TraceColumns columns = keeper.columns(0, 10, 10);
        assertThat(columns.has(1)).isTrue();
        assertThat(columns.has(5)).isFalse();
    }

    private static float highest(TraceColumns columns) {
        float highest = Float.NEGATIVE_INFINITY;
        for (int i = 0; i < columns.size(); i++) {
            highest = columns.has(i) ? Math.max(highest, columns.highest(i)) : highest;
        }
        return highest;
    }

    private static float lowest(TraceColumns columns) {
        float lowest = Float.POSITIVE_INFINITY;
        for (int i = 0; i < columns.size(); i++) {
            lowest = columns.has(i) ? Math.min(lowest, columns.lowest(i)) : lowest;
        }
        return lowest;
    }
}
