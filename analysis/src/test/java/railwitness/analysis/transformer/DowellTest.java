package railwitness.analysis.transformer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DowellTest {
    private static final double SKIN = 0.418e-3;

    /** Thin wire carries alternating current as direct current. */
    @Test
    void thinStrandsHaveNoLoss() {
        assertThat(Dowell.factor(0.1e-3, 1, 0.8, SKIN)).isCloseTo(1, within(1e-3));
    }

    /** One thick layer: the current keeps to one skin depth, so the factor is the foil over the skin depth. */
    @Test
    void aThickFoilCarriesInOneSkinDepth() {
        double foil = 4e-3 * Math.sqrt(Math.PI) / 2;
        assertThat(Dowell.factor(4e-3, 1, 1, SKIN)).isCloseTo(foil / SKIN, within(0.01 * foil / SKIN));
    }

    /** Low-frequency limit of Dowell's formula: 1 + (5 m^2 - 1) x^4 / 45 (textbooks on magnetics, from memory). */
    @Test
    void littlePenetrationFollowsTheSeries() {
        double x = 0.4;
        double strand = x * SKIN * 2 / Math.sqrt(Math.PI);
        for (int m : new int[] {1, 2, 4}) {
            double series = 1 + (5.0 * m * m - 1) / 45 * Math.pow(x, 4);
            assertThat(Dowell.factor(strand, m, 1, SKIN)).isCloseTo(series, within(0.01 * (series - 1) + 1e-4));
        }
    }

    @Test
    void moreLayersAndHigherFrequencyLoseMore() {
        double before = 1;
        for (int layers = 1; layers <= 6; layers++) {
            double factor = Dowell.blockFactor(0.7e-3, layers, 0.8, 0.45, 25e3, 80);
            assertThat(factor).isGreaterThan(before);
            before = factor;
        }
        assertThat(Dowell.blockFactor(0.7e-3, 2, 0.8, 0.45, 50e3, 80))
                .isGreaterThan(Dowell.blockFactor(0.7e-3, 2, 0.8, 0.45, 25e3, 80));
    }
}
