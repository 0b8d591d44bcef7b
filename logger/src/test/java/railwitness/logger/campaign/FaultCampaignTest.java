package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.logger.recording.store.SessionState;

/** The campaign in short; all of it is {@link FaultCampaign#main}. */
@Execution(ExecutionMode.CONCURRENT)
class FaultCampaignTest {
    private static final long SEED = 11;
    private static final Set<Trouble> TROUBLES_THAT_LIE =
            Set.of(Trouble.RESETS, Trouble.REVERSED_LEADS, Trouble.FROZEN);

    @Test
    void everySampledCaseEndsSafeAndKept() {
        List<CaseEnding> endings = FaultCase.sample(FaultCase.all(1), 24, SEED).parallelStream()
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

    /** Every instrument that resets itself, has its leads reversed or stands still under load: never a false point. */
    @Test
    void whatLiesUnderLoadNeverBecomesAPoint() {
        List<CaseEnding> endings = FaultCase.all(1).parallelStream()
                .filter(one -> TROUBLES_THAT_LIE.contains(one.trouble()))
                .filter(one -> one.moment() == Moment.NO_LOAD || one.moment() == Moment.LOADED)
                .map(FaultySession::virtual)
                .toList();
        System.out.println(EndingTable.of(endings));
        assertThat(endings).hasSizeGreaterThan(50);
        assertThat(endings.stream()
                        .filter(end ->
                                !end.safe() || !end.kept() || !end.foreign().isEmpty())
                        .map(end -> end.what() + " " + end.faults() + end.foreign())
                        .toList())
                .isEmpty();
    }

    /** The supply's computer stands still under load, for longer than anybody waits: told, and off when it wakes. */
    @Test
    void aFreezeLongerThanAllPatienceIsToldAndEndsOff() {
        for (Moment moment : List.of(Moment.FIRST_STEPS, Moment.LOADED, Moment.AVERAGING)) {
            CaseEnding ending = FaultySession.virtual(new FaultCase("supply", Trouble.STANDS_STILL, moment, 1));
            assertThat(ending.told()).as(moment.name()).isTrue();
            assertThat(ending.offAtFarEnd()).as(moment.name()).isTrue();
            assertThat(ending.kept()).as(moment.name()).isTrue();
            assertThat(ending.state()).as(moment.name()).contains(SessionState.TRIPPED);
        }
    }

    /** What an instrument does not know costs only that, or the words say before power why there is none. */
    @Test
    void instrumentsThatKnowLittleAreUsedOrRefusedInWords() {
        for (String instrument : CampaignSheets.instruments()) {
            FaultCase early = LongStream.range(1, 200)
                    .mapToObj(seed -> new FaultCase(instrument, Trouble.KNOWS_LITTLE, Moment.OPENING, seed))
                    .filter(one -> one.exchange() <= 2)
                    .findFirst()
                    .orElseThrow();
            CaseEnding ending = FaultySession.virtual(early);
            assertThat(ending.safe()).as(instrument).isTrue();
            assertThat(ending.kept()).as(instrument).isTrue();
            assertThat(ending.words())
                    .as(instrument)
                    .anyMatch(words -> words.startsWith("left out") || words.startsWith("no "));
            if (!instrument.equals("supply")) {
                assertThat(ending.state()).as(instrument).contains(SessionState.COMPLETE);
            }
        }
    }

    @Test
    void aSupplyThatResetsItselfEndsTheRunInWords() {
        CaseEnding ending = FaultySession.virtual(new FaultCase("supply", Trouble.RESETS, Moment.AVERAGING, 1));
        assertThat(ending.state()).contains(SessionState.TRIPPED);
        assertThat(ending.words())
                .anyMatch(words -> words.startsWith("trip")
                        && (words.contains("nobody ordered") || words.contains("the supply has reset itself")));
    }

    /** A supply that answers each question with the answer to the one before: likely numbers, none of them its own. */
    @Test
    void noReadingOfAnotherQuestionIsKept() {
        CaseEnding ending =
                FaultySession.virtual(new FaultCase("supply", Trouble.ANSWERS_BEFORE, Moment.TURNING_ON, 1));
        assertThat(ending.checked()).isGreaterThan(100);
        assertThat(ending.foreign()).isEmpty();
        assertThat(ending.safe()).isTrue();
    }

    @Test
    void reversedLeadsAreNamedAtFirstPower() {
        for (String meter : List.of("input shunt meter", "input meter", "plus meter", "minus meter")) {
            CaseEnding ending = FaultySession.virtual(new FaultCase(meter, Trouble.REVERSED_LEADS, Moment.ARMING, 1));
            assertThat(ending.state()).as(meter).contains(SessionState.TRIPPED);
            assertThat(ending.words())
                    .as(meter)
                    .anyMatch(words -> words.startsWith("first power") && words.contains("reversed"));
        }
    }

    /** Turns, input and rails alone: a sound unit gets through, asked about once. */
    @Test
    void aSoundUnitOnASparseSheetGetsThrough() {
        FaultCase sparse = LongStream.range(1, 4)
                .mapToObj(seed -> new FaultCase("input meter", Trouble.IGNORES_OFF, Moment.LOADED, seed))
                .filter(FaultCase::sparse)
                .findFirst()
                .orElseThrow();
        CaseEnding ending = FaultySession.virtual(sparse);
        assertThat(ending.state()).contains(SessionState.COMPLETE);
        assertThat(ending.words().stream().filter(words -> words.startsWith("asked")))
                .singleElement()
                .asString()
                .contains("without load; the design sheet does not say how much that may be");
    }
}
