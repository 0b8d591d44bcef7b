package railwitness.safety.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.rehearsal.Trouble;

/** The campaign in short; all of it is {@link FaultCampaign#main}. */
class FaultCampaignTest {
    @Test
    void everySampledCaseEndsSafe() {
        List<FaultCampaign.Case> sample = FaultCampaign.sample(FaultCampaign.cases(1), 12);
        List<FaultCampaign.Ending> endings =
                sample.stream().map(FaultCampaign::virtual).toList();
        System.out.println(FaultCampaign.table(endings));
        assertThat(endings).allMatch(FaultCampaign.Ending::safe);
    }

    @Test
    void aRunWithNothingWrongRunsToItsEnd() {
        FaultCampaign.Ending ending = FaultCampaign.virtual(
                new FaultCampaign.Case("input-meter", Trouble.IGNORES_OFF, SmallRun.Moment.LOADED, 1));
        assertThat(ending.completed()).isTrue();
        assertThat(ending.tripped() || ending.told()).isFalse();
        assertThat(ending.offAtFarEnd()).isTrue();
    }

    @Test
    void aSupplyThatNeverObeysIsToldAndOnlyThen() {
        FaultCampaign.Ending ending =
                FaultCampaign.virtual(new FaultCampaign.Case("supply", Trouble.IGNORES_OFF, SmallRun.Moment.LOADED, 1));
        assertThat(ending.offAtFarEnd()).isFalse();
        assertThat(ending.words()).anyMatch(words -> words.contains("could not be switched off: open the disconnect"));
    }

    @Test
    void overPseudoTerminalsAnOverloadedMeterTrips() {
        assumeTrue(PseudoTerminal.available());
        FaultCampaign.Ending meter = FaultCampaign.real(
                new FaultCampaign.Case("heatsink-meter", Trouble.OVERLOADED, SmallRun.Moment.FIRST_STEPS, 1));
        assertThat(meter.safe()).isTrue();
        assertThat(meter.tripped()).isTrue();
    }
}
