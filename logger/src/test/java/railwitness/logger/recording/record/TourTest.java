package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.drivers.bench.Calibration;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.reading.Channel;

class TourTest {
    private static HandRead at(String channel, Optional<String> moved) {
        return new HandRead(
                channel,
                Channel.of(channel),
                OptionalDouble.empty(),
                Optional.empty(),
                Calibration.NOT_STATED,
                moved,
                OptionalDouble.empty(),
                0,
                List.of());
    }

    private static List<String> tour(String... channels) {
        List<HandRead> meters = java.util.Arrays.stream(channels)
                .map(channel -> channel.startsWith("!")
                        ? at(channel.substring(1), Optional.empty())
                        : at(channel, Optional.of("hand-held")))
                .toList();
        return Tour.of(meters).stream().map(meter -> meter.reads().toString()).toList();
    }

    @Test
    void aMeterThatIsMovedComesBackToWhereItBegan() {
        assertThat(tour("plus.voltage", "minus.voltage", "input.voltage"))
                .containsExactly("plus.voltage", "minus.voltage", "input.voltage", "plus.voltage");
    }

    @Test
    void rippleIsReadWhereTheLeadsAre() {
        assertThat(tour("plus.voltage", "minus.voltage", "plus.ripple", "minus.ripple"))
                .containsExactly("plus.voltage", "plus.ripple", "minus.voltage", "minus.ripple", "plus.voltage");
    }

    @Test
    void aRailIsTheReferenceWhereverItStandsOnTheSheet() {
        assertThat(tour("input.voltage", "plus.voltage"))
                .containsExactly("plus.voltage", "input.voltage", "plus.voltage");
    }

    @Test
    void metersThatStayAreReadOnce() {
        assertThat(tour("!input.current", "plus.voltage", "minus.voltage"))
                .containsExactly("input.current", "plus.voltage", "minus.voltage", "plus.voltage");
    }

    @Test
    void aSinglePlaceIsReadOnce() {
        assertThat(tour("plus.voltage")).containsExactly("plus.voltage");
    }
}
