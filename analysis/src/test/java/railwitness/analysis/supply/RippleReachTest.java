package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Band;

class RippleReachTest {
    private static final OptionalDouble CYCLE = OptionalDouble.of(25_000);

    @Test
    void bandEndingBelowTheRippleCannotMeasureIt() {
        assertThat(reach(20, 20_000)).isEqualTo(RippleReach.BELOW);
        assertThat(reach(20, 49_999)).isEqualTo(RippleReach.BELOW);
    }

    @Test
    void bandEndingNotFarAboveLosesPart() {
        assertThat(reach(20, 100_000)).isEqualTo(RippleReach.LOSES_PART);
    }

    @Test
    void aFifthIsLostAtTwiceTheRipplesFrequency() {
        // common practice, no source: -3 dB at 100 kHz loses some 20 % of a 50 kHz ripple
        assertThat(RippleReach.lostShare(new Band(20, 100_000), 25_000)).isCloseTo(0.2, within(0.05));
    }

    @Test
    void wideBandCovers() {
        assertThat(reach(20, 300_000)).isEqualTo(RippleReach.COVERS);
        assertThat(reach(20, 20e6)).isEqualTo(RippleReach.COVERS);
    }

    @Test
    void bandOrFrequencyNotKnown() {
        assertThat(RippleReach.of(Optional.empty(), CYCLE)).isEqualTo(RippleReach.UNKNOWN);
        assertThat(RippleReach.of(Optional.of(new Band(20, 1e6)), OptionalDouble.empty()))
                .isEqualTo(RippleReach.UNKNOWN);
    }

    private static RippleReach reach(double low, double high) {
        return RippleReach.of(Optional.of(new Band(low, high)), CYCLE);
    }
}
