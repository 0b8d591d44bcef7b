package railwitness.analysis.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Limits are of each rail: the lower of 0.95 times its capacitors' rating and 1.15 times what is expected there. */
class RailBoundsTest {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();
    private static final long SEED = 20_261_127L;

    private static Rail rail(double nominal, int turns, boolean regulated, double rating) {
        return new Rail(
                "aux",
                nominal,
                UNKNOWN,
                OptionalInt.of(turns),
                Optional.of(regulated),
                OptionalDouble.of(rating),
                UNKNOWN,
                UNKNOWN);
    }

    private static RailBounds bounds(Rail rail, double input) {
        return RailBounds.of(design(rail, UNKNOWN), rail, input);
    }

    private static Design design(Rail rail, OptionalDouble railHigh) {
        Design plain = Design.of(
                new Unit("supply", Optional.empty(), Optional.empty(), Optional.empty()),
                Converter.unregulated(FilterInput.CAPACITOR),
                Input.of(12),
                Transformer.of(4, 12),
                List.of(rail));
        return new Design(
                plain.unit(),
                plain.converter(),
                plain.input(),
                plain.transformer(),
                plain.switches(),
                plain.rectifier(),
                plain.filter(),
                plain.rails(),
                plain.connected(),
                new UnitLimits(UNKNOWN, UNKNOWN, UNKNOWN, railHigh, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN),
                plain.coldResistance(),
                plain.decision(),
                plain.requirements());
    }

    @Test
    void capacitorsOf100VoltsNeverSee138() {
        // 40 to 120 V: 10 times 12 V expected, 1.15 of it is 138 V
        RailBounds bounds = bounds(rail(110, 40, false, 100), 12);
        assertThat(bounds.expectedVolts()).isCloseTo(120, within(1e-9));
        assertThat(bounds.highVolts()).isCloseTo(95, within(1e-9));
        assertThat(bounds.byRating()).isTrue();
    }

    @Test
    void aRegulatedRailOfTwelveVoltsIsBoundedByItsNominal() {
        assertThat(bounds(rail(12, 12, true, 63), 14.4).highVolts()).isCloseTo(13.8, within(1e-9));
    }

    @Test
    void aLimitForAllRailsDoesNotLiftTheLimitOfALowRail() {
        Rail low = rail(14, 5, false, 63);
        assertThat(RailBounds.of(design(low, OptionalDouble.of(45)), low, 14.4).highVolts())
                .isCloseTo(1.15 * 14.4 * 5 / 4, within(1e-9));
    }

    @Test
    void aRailsOwnLimitNeverLiesAboveItsCapacitors() {
        Rail stated = new Rail(
                "plus",
                36.7,
                UNKNOWN,
                OptionalInt.empty(),
                Optional.empty(),
                OptionalDouble.of(50),
                OptionalDouble.of(60),
                UNKNOWN);
        assertThat(RailBounds.of(design(stated, UNKNOWN), stated, 14.4).highVolts())
                .isCloseTo(47.5, within(1e-9));
    }

    @Test
    void noLimitEverPassesRatingOrExpectedVoltage() {
        Random random = new Random(SEED);
        System.out.println("seed " + SEED);
        for (int i = 0; i < 2000; i++) {
            double nominal = 5 + 100 * random.nextDouble();
            Rail rail = rail(nominal, 1 + random.nextInt(40), random.nextBoolean(), 10 + 150 * random.nextDouble());
            double input = 6 + 20 * random.nextDouble();
            OptionalDouble forAll = random.nextBoolean() ? OptionalDouble.of(5 + 150 * random.nextDouble()) : UNKNOWN;
            RailBounds bounds = RailBounds.of(design(rail, forAll), rail, input);
            assertThat(bounds.highVolts())
                    .isLessThanOrEqualTo(0.95 * rail.capacitorRatingVolts().orElseThrow())
                    .isLessThanOrEqualTo(1.15 * bounds.expectedVolts())
                    .isLessThanOrEqualTo(forAll.orElse(Double.MAX_VALUE))
                    .isPositive();
        }
    }
}
