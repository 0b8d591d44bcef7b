package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.logger.recording.store.EventEntry;

class FirstPowerEndingTest {
    private static final OptionalDouble HALF_AN_AMPERE = OptionalDouble.of(0.5);

    private static EventEntry event(String text) {
        return new EventEntry(1, "first power", text);
    }

    @Test
    void aRailThatStaysDownIsReadBackByName() {
        String text =
                "remote on: the current is within its bound, but the rails did not come up (plus -0.000300 V): drive";
        EarlyEnding ending = FirstPowerEnding.of(event(text), HALF_AN_AMPERE, 2).orElseThrow();
        assertThat(ending.lowRails()).containsExactly("plus");
        assertThat(ending.othersUp()).isTrue();
        assertThat(ending.remoteOn()).isTrue();
    }

    @Test
    void allRailsDownAreReadBack() {
        String text =
                "remote on: the current is within its bound, but the rails did not come up (plus 1.2 V, minus not read)";
        EarlyEnding ending = FirstPowerEnding.of(event(text), HALF_AN_AMPERE, 2).orElseThrow();
        assertThat(ending.lowRails()).containsExactly("plus", "minus");
        assertThat(ending.othersUp()).isFalse();
    }

    @Test
    void currentWithTheRemoteOffIsReadBack() {
        assertThat(FirstPowerEnding.of(
                        event("remote off: the unit draws 5.01 A at 3.45 V, the design allows 0.02 A"),
                        OptionalDouble.of(5.01),
                        2))
                .contains(new EarlyEnding("power-up", 5.01, false));
    }

    @Test
    void railsThatStoodAreReadBackAsEvidence() {
        String text = "remote on: the unit draws 2.00 A at 13.8 V after the inrush window of 0.560 s, without load the"
                + " design allows 1.00 A; the rails read (plus 36.7 V, minus -36.6 V): it is not a short on a rail";
        EarlyEnding ending =
                FirstPowerEnding.of(event(text), OptionalDouble.of(2), 2).orElseThrow();
        assertThat(ending.evidence().railVolts()).containsExactly(entry("plus", 36.7), entry("minus", -36.6));
        assertThat(ending.evidence().railsStand()).isTrue();
        assertThat(ending.evidence().boundKnown()).isTrue();
        assertThat(ending.lowRails()).isEmpty();
    }

    @Test
    void aBoundThatTheSheetDoesNotGiveIsReadBack() {
        String text =
                "remote off: the unit draws 0.300 A at 3.45 V; the design sheet does not say how much that may be";
        assertThat(FirstPowerEnding.of(event(text), HALF_AN_AMPERE, 2)
                        .orElseThrow()
                        .evidence()
                        .boundKnown())
                .isFalse();
    }

    @Test
    void aReversedLeadAccusesNobody() {
        assertThat(FirstPowerEnding.of(
                        event("the input current reads -0.6 A: the shunt's leads are reversed"), HALF_AN_AMPERE, 2))
                .isEmpty();
    }

    @Test
    void anInstrumentThatDidNotAnswerSaysNothingOfTheUnit() {
        assertThat(FirstPowerEnding.of(event("supply: no answer within 1 s"), HALF_AN_AMPERE, 2))
                .isEmpty();
    }
}
