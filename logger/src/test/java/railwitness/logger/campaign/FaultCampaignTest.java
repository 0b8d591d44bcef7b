package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.logger.store.SessionState;

/** The campaign in short; all of it is {@link FaultCampaign#main}. */
class FaultCampaignTest {
    private static final long SEED = 11;

    @Test
    void everySampledCaseEndsSafeAndKept() {
        List<CaseEnding> endings = FaultCase.sample(FaultCase.all(1), 24, SEED).stream()
                .map(FaultySession::virtual)
                .toList();
        System.out.println("seed " + SEED + "\n" + EndingTable.of(endings));
        assertThat(endings).allMatch(CaseEnding::safe).allMatch(CaseEnding::kept);
    }

    @Test
    void aTroubleThatAMeterCannotHaveChangesNothing() {
        CaseEnding ending = FaultySession.virtual(new FaultCase("input meter", Trouble.IGNORES_OFF, Moment.LOADED, 1));
        assertThat(ending.state()).contains(SessionState.COMPLETE);
        assertThat(ending.told()).isFalse();
        assertThat(ending.offAtFarEnd()).isTrue();
    }

    @Test
    void aSupplyThatNeverObeysIsTold() {
        CaseEnding ending = FaultySession.virtual(new FaultCase("supply", Trouble.IGNORES_OFF, Moment.LOADED, 1));
        assertThat(ending.offAtFarEnd()).isFalse();
        assertThat(ending.told()).isTrue();
        assertThat(ending.kept()).isTrue();
    }

    @Test
    void aBenchThatDoesNotOpenLeavesASessionThatSaysWhy() {
        FaultCase early = LongStream.range(1, 200)
                .mapToObj(seed -> new FaultCase("plus load", Trouble.VANISHED, Moment.OPENING, seed))
                .filter(one -> one.exchange() <= 2)
                .findFirst()
                .orElseThrow();
        CaseEnding ending = FaultySession.virtual(early);
        assertThat(ending.state()).contains(SessionState.TRIPPED);
        assertThat(ending.words()).anyMatch(words -> words.startsWith("no bench"));
        assertThat(ending.kept()).isTrue();
    }

    @Test
    void overPseudoTerminalsASupplyThatVanishesUnderLoadEndsSafe() {
        assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        CaseEnding ending = FaultySession.real(new FaultCase("supply", Trouble.VANISHED, Moment.FIRST_STEPS, 1));
        assertThat(ending.safe()).isTrue();
        assertThat(ending.kept()).isTrue();
    }
}
