package railwitness.drivers.converter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What the trade expects of each fault, with the reason; common practice, no source, unless one is named. */
class FaultTest {
    private static final Specimen HEALTHY = Specimen.usual();

    private static Balance loaded(String fault, double amps) {
        Specimen specimen = fault.isEmpty() ? HEALTHY : Fault.of(fault).in(HEALTHY);
        return new ConverterModel(specimen)
                .settled(Feed.of(13.8, 500), List.of(Draw.amps(amps), Draw.amps(amps)), 25, 25);
    }

    private static double plus(String fault, double amps) {
        return loaded(fault, amps).rail("plus").volts();
    }

    private static double minus(String fault, double amps) {
        return -loaded(fault, amps).rail("minus").volts();
    }

    private static Balance powered(String fault, boolean remote, double limitAmps) {
        World world = new World(Fault.of(fault).in(HEALTHY), 22);
        world.feed(0, Feed.of(13.8, limitAmps));
        world.remote(0, remote);
        return world.at(2_000_000_000L);
    }

    @Test
    void aShortedTurnCostsTheSamePowerAtEveryLoadAndHardlyMovesTheRails() {
        double idle = loaded("shorted-turn", 0).inputWatts() - loaded("", 0).inputWatts();
        double full = loaded("shorted-turn", 4).inputWatts() - loaded("", 4).inputWatts();
        assertThat(idle).isBetween(38.0, 45.0);
        assertThat(full).isCloseTo(idle, withinPercentage(20));
        assertThat(plus("shorted-turn", 4)).isCloseTo(plus("", 4), withinPercentage(1.5));
    }

    @Test
    void oneTurnFewerOnBothHalvesLowersTheRailsByElevenTwelfths() {
        double slope = slope("wrong-turns=1") / slope("");
        assertThat(slope).isCloseTo(11.0 / 12, within(0.003));
    }

    private static double slope(String fault) {
        Specimen specimen = fault.isEmpty() ? HEALTHY : Fault.of(fault).in(HEALTHY);
        ConverterModel converter = new ConverterModel(specimen);
        List<Draw> draws = List.of(Draw.amps(2), Draw.amps(2));
        Balance low = converter.settled(Feed.of(11, 500), draws, 25, 25);
        Balance high = converter.settled(Feed.of(14.4, 500), draws, 25, 25);
        return (high.rail("plus").volts() - low.rail("plus").volts()) / (high.terminalVolts() - low.terminalVolts());
    }

    /** A circuit simulation shows 2.4 times the ripple, at half the frequency, and a rail some 3 % lower. */
    @Test
    void halfASecondaryGivesRippleAtTheCyclesFrequencyOnBothRails() {
        for (String rail : new String[] {"plus", "minus"}) {
            Ripple weak = loaded("weak-half", 4).rail(rail).ripple();
            Ripple sound = loaded("", 4).rail(rail).ripple();
            assertThat(weak.rmsVolts() / sound.rmsVolts()).isBetween(2.1, 2.7);
            assertThat(weak.amplitudeVolts(1)).isGreaterThan(2 * weak.amplitudeVolts(2));
            assertThat(sound.amplitudeVolts(1)).isLessThan(0.01 * sound.amplitudeVolts(2));
        }
        assertThat(plus("weak-half", 4)).isBetween(0.95 * plus("", 4), 0.99 * plus("", 4));
    }

    /** The same by the circuit simulation: means within 0.1 %, so readings cannot tell the two apart. */
    @Test
    void anOpenHalfAndAHalfOfOneTurnFewerLookTheSame() {
        for (double amps : new double[] {1, 2, 4}) {
            assertThat(plus("weak-half", amps)).isCloseTo(plus("wrong-turns@half-2", amps), withinPercentage(0.2));
            assertThat(loaded("weak-half", amps).inputWatts())
                    .isCloseTo(loaded("wrong-turns@half-2", amps).inputWatts(), withinPercentage(0.4));
        }
    }

    /** Either rail gets one pulse a cycle then, as with half a secondary open; seen from outside they are alike. */
    @Test
    void aDeadDriveLooksLikeAWeakHalfWithAMoreTiredPrimary() {
        Ripple dead = loaded("dead-drive", 2).rail("plus").ripple();
        Ripple weak = loaded("weak-half", 2).rail("plus").ripple();
        assertThat(dead.amplitudeVolts(1)).isCloseTo(weak.amplitudeVolts(1), withinPercentage(15));
        assertThat(plus("dead-drive", 2)).isLessThan(plus("weak-half", 2));
        assertThat(loaded("dead-drive", 0).losses().magnetising())
                .isGreaterThan(2 * loaded("", 0).losses().magnetising());
    }

    /** That rail gets one pulse a cycle; the other feels it only through what both share: switch, primary, leakage. */
    @Test
    void aDeadRectifierShowsMostOnItsOwnRail() {
        Balance state = loaded("dead-rectifier@minus", 4);
        Ripple own = state.rail("minus").ripple();
        Ripple other = state.rail("plus").ripple();
        assertThat(own.amplitudeVolts(1)).isGreaterThan(own.amplitudeVolts(2));
        assertThat(own.amplitudeVolts(1)).isGreaterThan(1.5 * other.amplitudeVolts(1));
        double ownDrop = minus("", 4) - minus("dead-rectifier@minus", 4);
        double otherDrop = plus("", 4) - plus("dead-rectifier@minus", 4);
        assertThat(ownDrop).isGreaterThan(0.5).isGreaterThan(2 * otherDrop);
    }

    @Test
    void aShortedRectifierDrawsTheLimitAsSoonAsTheUnitIsTurnedOnAndNotBefore() {
        assertThat(powered("shorted-rectifier", false, 5).inputAmps()).isLessThan(0.01);
        World world = new World(Fault.of("shorted-rectifier").in(HEALTHY), 22);
        world.feed(0, Feed.of(13.8, 5));
        world.remote(0, true);
        boolean limited = false;
        double most = 0;
        for (int k = 1; k < 400; k++) {
            Balance state = world.at(k * 5_000_000L);
            limited |= state.limiting() && k > 10;
            most = Math.max(most, state.rail("plus").volts());
        }
        assertThat(limited).isTrue();
        assertThat(most).isLessThan(5);
    }

    @Test
    void aShortedSwitchDrawsTheLimitAsSoonAsInputIsThereEvenWhenTheUnitIsOff() {
        Balance state = powered("shorted-switch", false, 5);
        assertThat(state.limiting()).isTrue();
        assertThat(state.inputAmps()).isCloseTo(5, within(0.05));
        assertThat(state.terminalVolts()).isLessThan(0.5);
        assertThat(state.running()).isFalse();
    }

    @Test
    void aLeakySwitchDrainsInStandby() {
        double leak = powered("leaky-switch=1000", false, 5).inputAmps()
                - HEALTHY.drive().standbyAmps();
        assertThat(leak).isCloseTo(13.8 / 1000, withinPercentage(1));
    }

    @Test
    void aTiredCapacitorMovesNoMeanAndRaisesItsOwnRailsRipple() {
        Balance tired = loaded("tired-capacitor@minus=3", 4);
        Balance sound = loaded("", 4);
        assertThat(tired.rail("minus").volts()).isCloseTo(sound.rail("minus").volts(), withinPercentage(0.2));
        assertThat(tired.inputWatts()).isCloseTo(sound.inputWatts(), withinPercentage(0.2));
        assertThat(tired.rail("minus").ripple().rmsVolts()
                        / sound.rail("minus").ripple().rmsVolts())
                .isBetween(2.5, 3.3);
        assertThat(tired.rail("plus").ripple().rmsVolts())
                .isCloseTo(sound.rail("plus").ripple().rmsVolts(), withinPercentage(2));
    }

    @Test
    void leadResistanceSagsTheTerminalsButNotTheUnitAtItsTerminals() {
        Balance thin = loaded("lead-resistance=0.03", 4);
        Balance sound = loaded("", 4);
        assertThat(sound.terminalVolts() - thin.terminalVolts()).isCloseTo(0.03 * thin.inputAmps(), within(0.02));
        double atSameTerminals = thin.rail("plus").volts() + 3 * (sound.terminalVolts() - thin.terminalVolts());
        assertThat(atSameTerminals).isCloseTo(sound.rail("plus").volts(), withinPercentage(0.2));
    }

    @Test
    void aWeakCoreLosesMoreAtNoLoadInProportionToTheSquareOfTheInput() {
        double added = loaded("weak-core=3", 0).inputWatts() - loaded("", 0).inputWatts();
        assertThat(added).isBetween(3.0, 6.0);
        assertThat(plus("weak-core=3", 4)).isCloseTo(plus("", 4), withinPercentage(0.5));
    }

    @Test
    void everyCodeCanBeReadWithItsUsualValue() {
        for (FaultCode code : FaultCode.values()) {
            assertThat(Fault.of(code.word()).in(HEALTHY)).isNotEqualTo(HEALTHY);
        }
    }

    @Test
    void anUnknownCodeIsRefusedWithThoseThereAre() {
        assertThatThrownBy(() -> Fault.of("gremlins"))
                .hasMessageContaining("gremlins")
                .hasMessageContaining("weak-core");
    }

    @Test
    void aWrongPlaceOrValueIsRefused() {
        assertThatThrownBy(() -> Fault.of("weak-half@left")).hasMessageContaining("half-1");
        assertThatThrownBy(() -> Fault.of("weak-core=0.1")).hasMessageContaining("1.0 to 100.0");
        assertThatThrownBy(() -> Fault.of("weak-core=much")).hasMessageContaining("must be a number");
        assertThatThrownBy(() -> Fault.of("tired-capacitor@third").in(HEALTHY)).hasMessageContaining("plus, minus");
    }
}
