package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.fixture.ShortPlan;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;

/** The campaign in short; all of it is {@link OneMeterCampaign#main}. */
class OneMeterCampaignTest {
    private static final long SEED = 3;

    @ParameterizedTest
    @ValueSource(strings = {"", "shorted-rectifier", "shorted-switch"})
    void oneMeterAndKnobsFindWhatTheFullBenchFinds(String fault) {
        OneMeterCampaign.Compared compared = OneMeterCampaign.compared(
                Optional.of(fault).filter(word -> !word.isEmpty()).map(Fault::of), SEED, plan());
        System.out.println("seed " + SEED + " " + compared);
        assertThat(compared.one()).isEqualTo(compared.full());
        assertThat(compared.oneCause()).isEqualTo(compared.fullCause());
        assertThat(compared.pairs()).allMatch(pair -> pair.en() <= OneMeterCampaign.FARTHEST);
        assertThat(compared.pairs().size()).isGreaterThan(fault.startsWith("shorted") ? -1 : 8);
    }

    private static SheetText<Plan> plan() {
        return SheetText.of(
                "plan",
                Sheet.of("plan.toml", ShortPlan.of(0.5, "power-up", "no-load", "load-sweep; loads_pct = [25, 100]")),
                PlanReader::plan);
    }
}
