package railwitness.drivers.converter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railwitness.drivers.converter.Specimen.Drive;
import railwitness.drivers.converter.Specimen.Filter;

/** What holds for every converter, over random ones; the seed is printed with a failure. */
class ConverterModelProperties {
    private static final int SPECIMENS = 50;

    @Test
    void powerThatGoesInComesOutOrIsLost() {
        for (long seed = 0; seed < SPECIMENS; seed++) {
            Random random = new Random(seed);
            Balance state = settled(specimen(random), random);
            double lost = state.inputWatts() - state.outputWatts();
            assertThat(state.losses().total())
                    .as("seed %d: %s", seed, state)
                    .isCloseTo(lost, within(0.002 * state.inputWatts() + 1e-3));
        }
    }

    @Test
    void noLossIsBelowNought() {
        for (long seed = 0; seed < SPECIMENS; seed++) {
            Random random = new Random(seed);
            Losses lost = settled(specimen(random), random).losses();
            assertThat(List.of(lost.switches(), lost.clamp(), lost.core(), lost.rectifiers(), lost.secondary()))
                    .as("seed %d: %s", seed, lost)
                    .allMatch(watts -> watts >= -0.01);
        }
    }

    @Test
    void moreLoadNeverRaisesTheRail() {
        for (long seed = 0; seed < 25; seed++) {
            Specimen specimen = unregulated(specimen(new Random(seed)));
            double before = Double.POSITIVE_INFINITY;
            for (double amps : new double[] {0, 0.2, 1, 2, 4}) {
                double volts = railVolts(specimen, 13.8, amps);
                assertThat(volts).as("seed %d at %s A", seed, amps).isLessThanOrEqualTo(before + 1e-3);
                before = volts;
            }
        }
    }

    /** Fewer secondary turns than primary step down, more step up; common practice, no source. */
    @Test
    void fewerSecondaryTurnsThanPrimaryStepDown() {
        assertThat(railVolts(turns(6, 5), 12, 0.5)).isBetween(7.0, 10.0);
    }

    /** 12 V to 20 V and more; common practice, no source. */
    @Test
    void moreSecondaryTurnsThanPrimaryStepUp() {
        assertThat(railVolts(turns(5, 10), 12, 0.5)).isBetween(20.0, 24.0);
    }

    /** Rails of 20 to 60 V from such a unit; common practice, no source. */
    @Test
    void railsOfTwentyToSixtyVoltsComeFromTwoToFiveTimesTheTurns() {
        assertThat(railVolts(turns(4, 8), 12, 1)).isGreaterThan(20);
        assertThat(railVolts(turns(4, 20), 12.6, 1)).isLessThan(63).isGreaterThan(50);
    }

    private static Specimen turns(double primary, double secondary) {
        Specimen usual = Specimen.usual();
        Specimen.Transformer core = usual.transformer();
        return usual.withTransformer(core.withSecondaryTurns(
                secondary * core.primaryTurns() / primary, secondary * core.primaryTurns() / primary));
    }

    private static double railVolts(Specimen specimen, double volts, double amps) {
        return new ConverterModel(specimen)
                .settled(Feed.of(volts, 500), List.of(Draw.amps(amps), Draw.amps(amps)), 40, 40)
                .rails()
                .get(0)
                .volts();
    }

    private static Balance settled(Specimen specimen, Random random) {
        List<Draw> draws = List.of(Draw.amps(5 * random.nextDouble()), Draw.ohms(8 + 100 * random.nextDouble()));
        boolean regulated = specimen.drive().regulatedVolts().isPresent();
        double limit = !regulated && random.nextInt(3) == 0 ? 5 + 10 * random.nextDouble() : 500;
        return new ConverterModel(specimen)
                .settled(
                        Feed.of(11 + 4 * random.nextDouble(), limit),
                        draws,
                        20 + 60 * random.nextDouble(),
                        20 + 60 * random.nextDouble());
    }

    private static Specimen specimen(Random random) {
        Specimen usual = Specimen.usual();
        Filter filter = random.nextInt(3) == 0 ? Filter.CHOKE : Filter.CAPACITOR;
        double choke = filter == Filter.CHOKE ? 20e-6 + 60e-6 * random.nextDouble() : 3e-6 * random.nextDouble();
        Specimen.Rail plus = rail("plus", false, choke, random);
        Specimen.Rail minus = rail("minus", true, choke, random);
        OptionalDouble regulated =
                random.nextInt(4) == 0 ? OptionalDouble.of(15 + 10 * random.nextDouble()) : OptionalDouble.empty();
        double turns = 8 + random.nextInt(10);
        return usual.withDrive(new Drive(
                        15e3 + 40e3 * random.nextDouble(),
                        0.4 + 0.09 * random.nextDouble(),
                        9,
                        8,
                        0.3,
                        0.1,
                        random.nextDouble(),
                        0.001,
                        regulated))
                .withTransformer(usual.transformer().withSecondaryTurns(turns, turns - random.nextInt(2)))
                .withRails(filter, List.of(plus, minus));
    }

    private static Specimen unregulated(Specimen specimen) {
        Drive drive = specimen.drive();
        return specimen.withDrive(new Drive(
                drive.frequencyHz(),
                drive.duty(),
                drive.startVolts(),
                drive.dropOutVolts(),
                drive.softStartSeconds(),
                drive.controlAmps(),
                drive.gateWatts(),
                drive.standbyAmps(),
                OptionalDouble.empty()));
    }

    private static Specimen.Rail rail(String name, boolean negative, double choke, Random random) {
        return new Specimen.Rail(
                name,
                negative,
                choke,
                0.002 + 0.03 * random.nextDouble(),
                1e-3 + 8e-3 * random.nextDouble(),
                0.005 + 0.05 * random.nextDouble(),
                1000 + 4000 * random.nextDouble(),
                0,
                0,
                Specimen.OPEN_OHM);
    }
}
