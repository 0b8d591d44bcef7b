package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.drivers.converter.Fault;

/** The campaign in short; all of it is {@link OneMeterCampaign#main}. */
class OneMeterCampaignTest {
    private static final long SEED = 3;

    @ParameterizedTest
    @ValueSource(strings = {"", "weak-half", "shorted-rectifier"})
    void oneMeterAndKnobsFindWhatTheFullBenchFinds(String fault) {
        OneMeterCampaign.Compared compared = OneMeterCampaign.compared(
                Optional.of(fault).filter(word -> !word.isEmpty()).map(Fault::of), SEED);
        System.out.println("seed " + SEED + " " + compared);
        assertThat(compared.one()).isEqualTo(compared.full());
        assertThat(compared.pairs()).allMatch(pair -> pair.en() <= 1);
        assertThat(compared.pairs().size()).isGreaterThan(fault.startsWith("shorted") ? 0 : 15);
    }
}
