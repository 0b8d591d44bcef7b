package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.LatestReadings;
import railwitness.drivers.reading.Measured;
import railwitness.logger.recording.record.RailsNow;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.stage.AtRest;
import railwitness.safety.power.PowerState;

/** What nobody has read is not known, and the band says so. */
class BandWordsTest {
    private static final List<String> RAILS = List.of("plus", "minus");

    private static RunView view(PowerState power, double now, Map<String, Double> readAt, boolean over) {
        LatestReadings last = new LatestReadings();
        readAt.forEach((name, at) -> {
            Channel channel = Channel.of(name);
            last.heard(new Measured(channel, name.startsWith("minus") ? -36.7 : 36.7, 0, (long) (at * 1e9)));
        });
        return new RunView(
                false,
                now,
                power,
                last.all(),
                RailsNow.of(RAILS, last, now),
                List.of(),
                Optional.empty(),
                "",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                over ? Optional.of("broke off") : Optional.empty());
    }

    @Test
    void withoutAWordOfTheSupplyTheOutputIsNotKnown() {
        assertThat(BandWords.atRest(Optional.of(new AtRest(9, 10, false))).title())
                .isEqualTo("Output not known");
        assertThat(BandWords.atRest(Optional.of(new AtRest(0, 10, false))).detail())
                .contains("0 of 10 instruments answer", "does not say whether it is on");
        assertThat(BandWords.atRest(Optional.of(new AtRest(10, 10, true))).title())
                .isEqualTo("Output is off");
        assertThat(BandWords.atRest(Optional.empty()).title()).isEqualTo("Nothing is connected");
    }

    @Test
    void beforeTheFirstReadingNothingIsKnown() {
        BandWords words = BandWords.of(view(PowerState.NOT_KNOWN, 1, Map.of(), false));
        assertThat(words.title()).isEqualTo("Output not known");
        assertThat(words.volts()).isEmpty();
        assertThat(words.touch()).contains("not read yet");
    }

    @Test
    void anOldReadingIsNotShownAsWhatIsNow() {
        Map<String, Double> read = Map.of("supply.voltage", 10.0, "plus.voltage", 10.0, "minus.voltage", 10.0);
        BandWords fresh = BandWords.of(view(PowerState.ON, 11, read, false));
        assertThat(fresh.volts()).isEqualTo("36.70 V");
        assertThat(fresh.touch()).contains("73 V between the rails: do not touch");
        BandWords old = BandWords.of(view(PowerState.ON, 30, read, false));
        assertThat(old.volts()).isEqualTo("V not known");
        assertThat(old.touch()).contains("not known").contains("charged").doesNotContain("73");
    }

    @Test
    void aRailThatIsNotReadIsNamed() {
        BandWords words = BandWords.of(view(PowerState.ON, 11, Map.of("plus.voltage", 10.0), false));
        assertThat(words.touch()).contains("37 V between the rails that are read", "− rail", "take it as charged");
    }

    @Test
    void anOutputThatIsNotConfirmedIsSaidAbove() {
        BandWords words = BandWords.of(view(PowerState.NOT_CONFIRMED, 11, Map.of(), false));
        assertThat(words.ground()).isEqualTo(BandWords.Ground.TRIPPED);
        assertThat(words.title()).isEqualTo("NOT CONFIRMED OFF");
        assertThat(words.touch()).contains("Open the hand disconnect now");
    }
}
