package railwitness.drivers.converter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class WorldTest {
    private static final Specimen USUAL = Specimen.usual();

    private static long seconds(double seconds) {
        return Math.round(seconds * 1e9);
    }

    private static World running(Specimen specimen) {
        World world = new World(specimen, 22);
        world.feed(0, Feed.of(13.8, 40));
        world.remote(0, true);
        return world;
    }

    /** A load that the limited supply cannot carry: the unit drops out and starts again and again, as real ones do. */
    @Test
    void anOverloadBehindACurrentLimitMakesItStartAgainAndAgain() {
        World world = running(USUAL);
        world.feed(seconds(2), Feed.of(13.8, 10));
        world.draw(seconds(2), "plus", "load", Draw.ohms(10));
        world.draw(seconds(2), "minus", "load", Draw.ohms(10));
        int falls = 0;
        boolean high = true;
        for (int k = 0; k < 300; k++) {
            double volts = world.at(seconds(2 + k * 0.01)).rail("plus").volts();
            falls += high && volts < 8 ? 1 : 0;
            high = volts > 15 || high && volts >= 8;
        }
        assertThat(falls).isGreaterThan(2);
    }

    @Test
    void nothingIsThereBeforePower() {
        Balance state = new World(USUAL, 22).at(seconds(1));
        assertThat(state.inputAmps()).isZero();
        assertThat(state.rail("plus").volts()).isZero();
    }

    @Test
    void softStartLeadsTheRailsUpWithoutExceedingFiveAmps() {
        World world = running(USUAL);
        double most = 0;
        for (int k = 5; k < 200; k++) {
            most = Math.max(most, world.at(seconds(k * 0.005)).inputAmps());
        }
        assertThat(most).isBetween(1.0, 5.0);
        assertThat(world.at(seconds(2)).rail("plus").volts()).isBetween(40.0, 42.5);
        assertThat(world.at(seconds(2)).rail("minus").volts()).isBetween(-42.5, -40.0);
    }

    @Test
    void settlesWhereTheQuasiStaticSolutionLies() {
        World world = running(USUAL);
        world.draw(seconds(1), "plus", "load", Draw.amps(3));
        world.draw(seconds(1), "minus", "load", Draw.ohms(20));
        Balance inTime = world.at(seconds(4));
        Balance settled = new ConverterModel(USUAL)
                .settled(
                        Feed.of(13.8, 40),
                        List.of(Draw.amps(3), Draw.ohms(20)),
                        world.degC(seconds(4), "transformer"),
                        world.degC(seconds(4), "heatsink"));
        assertThat(inTime.rail("plus").volts()).isCloseTo(settled.rail("plus").volts(), within(0.01));
        assertThat(inTime.inputAmps()).isCloseTo(settled.inputAmps(), withinPercentage(0.1));
    }

    /** Discharge of a capacitor through a resistor: U = U0 exp(-t / RC). */
    @Test
    void unloadedRailsStayChargedAndFallByTheBleeder() {
        World world = running(USUAL);
        double before = world.at(seconds(3)).rail("plus").volts();
        world.remote(seconds(3), false);
        double expected = before * Math.exp(-10 / (3300 * 4400e-6));
        assertThat(world.at(seconds(13)).rail("plus").volts()).isCloseTo(expected, withinPercentage(3));
    }

    @Test
    void aUnitThatIsOffDrainsItsStandbyCurrentOnly() {
        World world = new World(USUAL, 22);
        world.feed(0, Feed.of(13.8, 40));
        assertThat(world.at(seconds(5)).inputAmps()).isCloseTo(0.0004, within(1e-5));
    }

    @Test
    void itStartsAtItsStartVoltageAndHoldsOnToItsDropOutVoltage() {
        World world = running(USUAL);
        world.feed(seconds(3), Feed.of(9.0, 40));
        assertThat(world.at(seconds(6)).running()).isTrue();
        world.feed(seconds(6), Feed.of(8.3, 40));
        assertThat(world.at(seconds(9)).running()).isFalse();
        world.feed(seconds(9), Feed.of(9.0, 40));
        assertThat(world.at(seconds(12)).running()).isFalse();
        world.feed(seconds(12), Feed.of(9.7, 40));
        assertThat(world.at(seconds(15)).running()).isTrue();
    }

    @Test
    void theSupplyFoldsBackWhenTheUnitWantsMoreThanItsLimit() {
        World world = running(USUAL);
        world.feed(seconds(2), Feed.of(13.8, 10));
        world.draw(seconds(2), "plus", "load", Draw.ohms(16));
        world.draw(seconds(2), "minus", "load", Draw.ohms(16));
        Balance state = world.at(seconds(4));
        assertThat(state.limiting()).isTrue();
        assertThat(state.inputAmps()).isCloseTo(10, within(0.1));
        assertThat(state.terminalVolts()).isBetween(8.5, 13.0);
    }

    /** Copper 0.393 %/K and switches get worse with heat, so the rails sag while it soaks. */
    @Test
    void itWarmsUpUnderLoadAndTheRailsSag() {
        World world = running(USUAL);
        world.draw(seconds(2), "plus", "load", Draw.amps(4));
        world.draw(seconds(2), "minus", "load", Draw.amps(4));
        double cold = world.at(seconds(5)).rail("plus").volts();
        double warm = world.at(seconds(3600)).rail("plus").volts();
        assertThat(world.degC(seconds(3600), "heatsink")).isBetween(30.0, 70.0);
        assertThat(world.degC(seconds(3600), "transformer")).isBetween(30.0, 70.0);
        assertThat(cold - warm).isBetween(0.01, 1.0);
    }

    @Test
    void askedForATimeGoneByItShowsThePresent() {
        World world = running(USUAL);
        double now = world.at(seconds(3)).rail("plus").volts();
        assertThat(world.at(seconds(0.2)).rail("plus").volts()).isEqualTo(now);
    }

    @Test
    void aRegulatedUnitHoldsItsRailsUntilItsDutyIsUsedUp() {
        Specimen.Drive drive = USUAL.drive();
        World world = running(USUAL.withDrive(new Specimen.Drive(
                drive.frequencyHz(), drive.duty(), 9.5, 8.5, 0.5, 0.12, 0, 0, OptionalDouble.of(33))));
        world.draw(seconds(1), "plus", "load", Draw.amps(2));
        world.draw(seconds(1), "minus", "load", Draw.amps(2));
        assertThat(world.at(seconds(4)).rail("plus").volts()).isCloseTo(33, within(0.02));
        world.feed(seconds(4), Feed.of(13, 40));
        assertThat(world.at(seconds(8)).rail("plus").volts()).isCloseTo(33, within(0.02));
        world.feed(seconds(8), Feed.of(10.5, 40));
        assertThat(world.at(seconds(12)).rail("plus").volts()).isBetween(26.0, 31.0);
    }

    @Test
    void sixHoursOfReadingsStayFinite() {
        World world = running(USUAL);
        world.draw(seconds(2), "plus", "load", Draw.amps(4));
        world.draw(seconds(2), "minus", "load", Draw.amps(4));
        double sum = 0;
        for (int k = 3; k < 21_600; k++) {
            for (int channel = 0; channel < 10; channel++) {
                sum += world.at(seconds(k + channel * 0.05)).rail("plus").volts();
            }
            sum += world.now().rail("plus").ripple().rmsVolts(20, 300_000);
        }
        assertThat(sum).isFinite().isPositive();
    }
}
