package railwitness.drivers.converter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A unit that runs for hours: two bodies, parts that wear, a room that wanders. */
class WearTest {
    private static World running(Specimen specimen, Room room, Wear wear) {
        World world = new World(specimen, new Surroundings(room, wear));
        world.feed(0, Feed.of(13.8, 40));
        world.remote(0, true);
        world.draw(2_000_000_000L, "plus", "load", Draw.amps(4));
        world.draw(2_000_000_000L, "minus", "load", Draw.amps(4));
        return world;
    }

    private static long hours(double hours) {
        return Math.round(hours * 3600e9);
    }

    /** In balance each body gives to the air what its own losses and the other body bring it (two-node network). */
    @Test
    void joinedBodiesComeToTheBalanceOfTheirNetwork() {
        Specimen.Thermal thermal = Specimen.usual().thermal().joined(2);
        World world = running(Specimen.usual().withThermal(thermal), Room.still(20), Wear.NONE);
        world.at(hours(5));
        Losses losses = world.now().losses();
        double core = world.degC(hours(5), "transformer") - 20;
        double sink = world.degC(hours(5), "heatsink") - 20;
        assertThat(core / thermal.transformerKelvinPerWatt() + (core - sink) / 2)
                .isCloseTo(losses.transformer(), within(0.02));
        assertThat(sink / thermal.heatsinkKelvinPerWatt() + (sink - core) / 2)
                .isCloseTo(losses.heatsink(), within(0.02));
    }

    @Test
    void dryingCapacitorRaisesTheRipple() {
        World world = running(Specimen.usual(), Room.still(20), Wear.capacitor("plus", 0.5));
        double early = world.at(hours(0.5)).rail("plus").ripple().rmsVolts();
        double late = world.at(hours(4)).rail("plus").ripple().rmsVolts();
        assertThat(late).isGreaterThan(1.5 * early);
    }

    @Test
    void jointOpensHotAndTheTerminalsSag() {
        World sound = running(Specimen.usual(), Room.still(20), Wear.NONE);
        World bad = running(Specimen.usual(), Room.still(20), Wear.joint(40));
        assertThat(bad.at(hours(0.01)).terminalVolts())
                .isCloseTo(sound.at(hours(0.01)).terminalVolts(), within(0.01));
        assertThat(bad.at(hours(3)).terminalVolts())
                .isLessThan(sound.at(hours(3)).terminalVolts() - 0.5);
    }

    @Test
    void heatThatMakesHeatRunsAway() {
        World sound = running(Specimen.usual(), Room.still(40), Wear.NONE);
        World away = running(Specimen.usual(), Room.still(40), Wear.runaway(5));
        assertThat(away.degC(hours(2), "heatsink")).isGreaterThan(sound.degC(hours(2), "heatsink") + 20);
    }

    @Test
    void roomWandersAboutItsMean() {
        Room room = Room.wandering(20, 3);
        double most = 0;
        for (int i = 0; i < 24 * 60; i++) {
            most = Math.max(most, Math.abs(room.degC(i * 60.0) - 20));
        }
        assertThat(most).isBetween(2.0, 3.0);
    }

    @Test
    void unknownWearIsRefusedInOneLine() {
        assertThatThrownBy(() -> Wear.of("paint=3")).hasMessageContaining("known are capacitor@RAIL");
        assertThatThrownBy(() -> Wear.of("joint=x")).hasMessageContaining("no wear");
    }
}
