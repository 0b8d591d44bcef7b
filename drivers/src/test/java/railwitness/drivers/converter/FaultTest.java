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

    /** Conduction loss goes with the resistance: 2 x 5 mohm more on one side, some 27 A in half of the time. */
    @Test
    void aDeadParallelSwitchCostsAsItsSidesResistance() {
        double idle =
                loaded("dead-parallel-switch=3", 0).inputWatts() - loaded("", 0).inputWatts();
        Balance dead = loaded("dead-parallel-switch=3", 4);
        double added = dead.losses().switches() - loaded("", 4).losses().switches();
        assertThat(idle).isCloseTo(0, within(0.05));
        assertThat(added).isBetween(2.0, 6.0);
        assertThat(plus("dead-parallel-switch=3", 4)).isLessThan(plus("", 4));
    }

    /** Half of voltage times current in both edges (Mohan, chapter 2): 2 x 13.5 V x 27 A / 2 x 1.5 us x 2 x 25 kHz. */
    @Test
    void aSlowDriveCostsInProportionToTheCurrent() {
        Balance slow = loaded("slow-drive=1.5", 4);
        double added = slow.losses().switches() - loaded("", 4).losses().switches();
        double converted =
                slow.inputAmps() - added / slow.terminalVolts() - loaded("", 0).inputAmps();
        double onAmps = converted / 0.9;
        assertThat(added).isCloseTo(slow.terminalVolts() * onAmps * 1.5e-6 * 2 * 25_000, withinPercentage(5));
        assertThat(loaded("slow-drive=1.5", 0).inputWatts() - loaded("", 0).inputWatts())
                .isLessThan(0.3);
        assertThat(plus("slow-drive=1.5", 4)).isCloseTo(plus("", 4), withinPercentage(1));
    }

    /** Half of the current for the recovery time is the charge that the full reverse voltage drives back. */
    @Test
    void slowRectifiersCostWithLoadAndAtTheRails() {
        Balance slow = loaded("slow-rectifier=0.5", 4);
        double added = slow.losses().rectifiers() - loaded("", 4).losses().rectifiers();
        assertThat(added).isCloseTo(2 * 2 * 25_000 * 37 * 4 * 0.5e-6, withinPercentage(10));
        assertThat(loaded("slow-rectifier=0.5", 0).inputWatts() - loaded("", 0).inputWatts())
                .isLessThan(0.3);
    }

    /** 0.9 of the time a drain stands at twice the input, so the input lies across the clamp: 0.9 x 13.8^2 / 15. */
    @Test
    void aLeakyClampCostsTheSameAtEveryLoad() {
        double idle = loaded("leaky-clamp=15", 0).inputWatts() - loaded("", 0).inputWatts();
        double full = loaded("leaky-clamp=15", 4).inputWatts() - loaded("", 4).inputWatts();
        assertThat(idle).isCloseTo(0.9 * 13.8 * 13.8 / 15, withinPercentage(5));
        assertThat(full).isCloseTo(idle, withinPercentage(15));
    }

    @Test
    void aHotJointIsSoundWhileItIsCold() {
        ConverterModel joint = new ConverterModel(Fault.of("hot-joint=0.02").in(HEALTHY));
        List<Draw> draws = List.of(Draw.amps(4), Draw.amps(4));
        double cold =
                joint.settled(Feed.of(13.8, 500), draws, 25, 25).rail("plus").volts();
        double hot =
                joint.settled(Feed.of(13.8, 500), draws, 25, 60).rail("plus").volts();
        assertThat(cold).isCloseTo(plus("", 4), within(1e-6));
        assertThat(hot).isLessThan(cold - 1);
    }

    /** Doubles every 10 K: 3 W at 25 degC are 24 W at 55. */
    @Test
    void aRunawaysLeakDoublesEveryTenKelvin() {
        ConverterModel sound = new ConverterModel(HEALTHY);
        ConverterModel leaks = new ConverterModel(Fault.of("thermal-runaway=3").in(HEALTHY));
        List<Draw> draws = List.of(Draw.amps(0), Draw.amps(0));
        Feed feed = Feed.of(13.8, 500);
        assertThat(leaks.settled(feed, draws, 25, 55).inputWatts()
                        - sound.settled(feed, draws, 25, 55).inputWatts())
                .isCloseTo(24, withinPercentage(2));
    }

    @Test
    void aUnitThatLocksOutStopsUnderLoadAndNotWithout() {
        World world = new World(Fault.of("hiccup=13.7").in(HEALTHY), 22);
        world.feed(0, Feed.of(14.1, 500));
        world.remote(0, true);
        assertThat(world.at(3_000_000_000L).rail("plus").volts()).isGreaterThan(35);
        world.draw(3_000_000_000L, "plus", "load", Draw.amps(4));
        world.draw(3_000_000_000L, "minus", "load", Draw.amps(4));
        double least = 100;
        for (int tenth = 31; tenth < 60; tenth++) {
            least = Math.min(least, world.at(tenth * 100_000_000L).rail("plus").volts());
        }
        assertThat(least).isLessThan(30);
    }

    /** Four amperes on each rail need some 24 A at the input: at 18 A the unit stops, rests, and starts again. */
    @Test
    void aUnitThatStopsByItsCurrentHiccupsUnderLoadAndNotWithout() {
        World world = new World(Fault.of("hiccup@over-current=18").in(HEALTHY), 22);
        world.feed(0, Feed.of(14.1, 500));
        world.remote(0, true);
        assertThat(world.at(3_000_000_000L).rail("plus").volts()).isGreaterThan(35);
        world.draw(3_000_000_000L, "plus", "load", Draw.amps(4));
        world.draw(3_000_000_000L, "minus", "load", Draw.amps(4));
        int stopped = 0;
        int ran = 0;
        for (int hundredth = 310; hundredth < 600; hundredth++) {
            boolean running = world.at(hundredth * 10_000_000L).running();
            ran += running ? 1 : 0;
            stopped += running ? 0 : 1;
        }
        assertThat(stopped).isGreaterThan(20);
        assertThat(ran).isGreaterThan(3);
    }

    /** A core driven one way only saturates: what the switches' and the primary's resistance lets through flows. */
    @Test
    void aReversedPrimaryHalfIsAShort() {
        assertThat(loaded("reversed-half", 0).inputAmps()).isGreaterThan(100);
        assertThat(powered("reversed-half", false, 5).limiting()).isFalse();
    }

    @Test
    void aShortThatWaitsForLoadIsNotSeenWithoutIt() {
        assertThat(plus("short-under-load=20", 0)).isCloseTo(plus("", 0), within(1e-6));
        double added =
                loaded("short-under-load=20", 4).inputWatts() - loaded("", 4).inputWatts();
        assertThat(added).isCloseTo(37.0 * 37 / 20, withinPercentage(20));
        assertThat(minus("short-under-load=20", 0.5)).isCloseTo(minus("", 0.5), within(1e-6));
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
