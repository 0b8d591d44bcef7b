package railwitness.analysis.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import railwitness.analysis.reference.SimulatedSupply;

/** What a sheet says that cannot be. */
class DesignCheckTest {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();

    /** A sheet whose parts are changed one at a time: 12 V, highest 14.4 V, 5 to 10 turns, rails of 22 V. */
    private static final class Draft {
        Converter converter = Converter.unregulated(FilterInput.CAPACITOR);
        Input input = input(UNKNOWN, UNKNOWN, UNKNOWN);
        Transformer transformer = Transformer.of(5, 10);
        Optional<Switches> switches = Optional.empty();
        Optional<Filter> filter = Optional.empty();
        List<Rail> rails = List.of(new Rail("plus", 22, UNKNOWN), new Rail("minus", -22, UNKNOWN));
        UnitLimits limits = UnitLimits.none();

        Design design() {
            return new Design(
                    new Unit("supply", Optional.empty(), Optional.empty(), Optional.empty()),
                    converter,
                    input,
                    Optional.of(transformer),
                    switches,
                    Optional.empty(),
                    filter,
                    rails,
                    List.of(),
                    limits,
                    ColdResistance.none(),
                    Decision.GUARD_BAND_U,
                    List.of());
        }
    }

    private static OptionalDouble of(double value) {
        return OptionalDouble.of(value);
    }

    private static Input input(OptionalDouble highestAmperes, OptionalDouble fuse, OptionalDouble rating) {
        return new Input(12, of(10.5), of(14.4), highestAmperes, fuse, UNKNOWN, UNKNOWN, rating);
    }

    private static List<Remark> refused(Draft draft) {
        return DesignCheck.of(draft.design(), 0).stream()
                .filter(Remark::refuses)
                .toList();
    }

    private static void refusedOnlyAt(Draft draft, String table, String key, String... words) {
        assertThat(refused(draft)).singleElement().satisfies(remark -> {
            assertThat(remark.table()).isEqualTo(table);
            assertThat(remark.key()).isEqualTo(key);
            assertThat(remark.words()).contains(words);
        });
    }

    @Test
    void aPlainSheetAndTheSimulatedUnitsAreInOrder() {
        assertThat(DesignCheck.of(new Draft().design(), 0)).isEmpty();
        assertThat(DesignCheck.of(SimulatedSupply.design(), 14.4)).isEmpty();
    }

    /** Home-built 12 V step-up, 5 to 10 turns, 1.25 cm2, published with its inputs; 0.144 T recomputed at 14.4 V, 40 kHz. */
    @Test
    void publishedCarAudioCoreIsBelowItsLimitAndHalfTheTurnsAtAQuarterOfTheFrequencyAreNot() {
        assertThat(FluxDensity.peakTesla(14.4, 0.5, 40_000, 5, 1.25e-4)).isCloseTo(0.144, within(5e-4));
        Draft draft = new Draft();
        draft.converter = converter(40_000, UNKNOWN);
        draft.transformer = core(5, 10);
        assertThat(refused(draft)).isEmpty();
        draft.converter = converter(10_000, UNKNOWN);
        draft.transformer = core(2, 4);
        refusedOnlyAt(draft, "[transformer]", "highest_flux_T", "1.44 T", "0.3 T");
    }

    private static Converter converter(double hertz, OptionalDouble start) {
        return new Converter(FilterInput.CAPACITOR, false, of(hertz), of(0.5), start, UNKNOWN);
    }

    private static Transformer core(int primary, int secondary) {
        return new Transformer(primary, secondary, UNKNOWN, UNKNOWN, of(125), of(0.3), UNKNOWN, UNKNOWN, UNKNOWN);
    }

    /** A driver's data sheet asks 2.06 turns for 5.175 V from 3.234 V; with a ratio of 1.5 there are 4.85 V at most. */
    @Test
    void turnsBelowThoseOfThePublishedDriverCannotGiveItsRail() {
        Draft draft = new Draft();
        draft.input = Input.of(3.234);
        draft.rails = List.of(new Rail("plus", 5.175, UNKNOWN));
        draft.transformer = Transformer.of(2, 3);
        refusedOnlyAt(draft, "[[rail]]", "nominal_V", "5.18 V", "2 to 3 turns", "4.85 V");
        draft.transformer = Transformer.of(100, 206);
        assertThat(refused(draft)).isEmpty();
    }

    @Test
    void aTwelveVoltRailOnFortyVoltsOfTurnsNeedsTurnsOrARegulatorOfItsOwn() {
        Draft draft = new Draft();
        draft.transformer = Transformer.of(4, 14);
        Rail plain = new Rail("aux", 12, UNKNOWN);
        draft.rails = List.of(new Rail("plus", 38, UNKNOWN), plain);
        refusedOnlyAt(draft, "[[rail]]", "nominal_V", "aux", "42 V", "secondary_turns", "regulated");
        draft.rails = List.of(new Rail("plus", 38, UNKNOWN), aux(OptionalInt.of(4), Optional.empty()));
        assertThat(refused(draft)).isEmpty();
        draft.rails = List.of(new Rail("plus", 38, UNKNOWN), aux(OptionalInt.empty(), Optional.of(true)));
        assertThat(refused(draft)).isEmpty();
    }

    private static Rail aux(OptionalInt turns, Optional<Boolean> regulated) {
        return new Rail("aux", 12, UNKNOWN, turns, regulated, UNKNOWN, UNKNOWN, UNKNOWN);
    }

    @Test
    void aSwitchSeesTwiceTheInput() {
        Draft draft = new Draft();
        draft.switches = Optional.of(new Switches(UNKNOWN, of(28), UNKNOWN));
        refusedOnlyAt(draft, "[switches]", "rating_V", "28.8 V");
        draft.switches = Optional.of(new Switches(UNKNOWN, of(30), UNKNOWN));
        assertThat(DesignCheck.of(draft.design(), 0)).singleElement().satisfies(remark -> assertThat(remark.refuses())
                .isFalse());
    }

    @Test
    void capacitorsMustStandTheUnloadedRailAtTheHighestInputOfSheetAndPlan() {
        Draft draft = new Draft();
        draft.filter = Optional.of(new Filter(UNKNOWN, UNKNOWN, of(35), UNKNOWN, UNKNOWN, UNKNOWN));
        assertThat(refused(draft)).isEmpty(); // 28.8 V
        assertThat(DesignCheck.of(draft.design(), 18))
                .filteredOn(Remark::refuses)
                .singleElement()
                .satisfies(remark -> assertThat(remark.words()).contains("36 V", "35 V"));
        draft.input = input(UNKNOWN, UNKNOWN, of(10));
        refusedOnlyAt(draft, "[input]", "capacitor_rating_V", "14.4 V");
    }

    @Test
    void aUnitMustStartAtItsLowestInput() {
        Draft draft = new Draft();
        draft.converter = converter(40_000, of(11));
        refusedOnlyAt(draft, "[converter]", "start_V", "11 V", "10.5 V");
    }

    @Test
    void aFuseFarAboveTheHighestCurrentIsSaid() {
        Draft draft = new Draft();
        draft.input = input(of(10), of(30), UNKNOWN);
        assertThat(DesignCheck.of(draft.design(), 0)).singleElement().satisfies(remark -> {
            assertThat(remark.refuses()).isFalse();
            assertThat(remark.words()).contains("30 A", "10 A");
        });
        draft.input = input(of(10), of(100), UNKNOWN);
        refusedOnlyAt(draft, "[input]", "fuse_A", "100 A");
    }

    @Test
    void railsOfEitherSignDoubleTheTouchLimit() {
        Draft draft = new Draft();
        draft.limits = limits(UNKNOWN, UNKNOWN, of(31));
        draft.rails = List.of(new Rail("plus", 32, UNKNOWN), new Rail("minus", -32, UNKNOWN));
        draft.transformer = Transformer.of(5, 15);
        refusedOnlyAt(draft, "[limits]", "touch_V", "62 V");
        draft.rails = List.of(new Rail("plus", 32, UNKNOWN));
        assertThat(refused(draft)).isEmpty();
    }

    @Test
    void limitsMustLetASoundUnitRun() {
        Draft draft = new Draft();
        draft.limits = limits(of(20), UNKNOWN, UNKNOWN);
        refusedOnlyAt(draft, "[limits]", "rail_high_V", "24 V", "20 V");
        draft.limits = limits(UNKNOWN, of(23), UNKNOWN);
        refusedOnlyAt(draft, "[limits]", "rail_low_V", "22 V", "23 V");
    }

    @Test
    void railsThatAreMeantToDifferHaveNoImbalance() {
        Draft draft = new Draft();
        draft.rails = List.of(
                new Rail("plus", 22, UNKNOWN),
                new Rail("minus", -12, UNKNOWN, OptionalInt.of(5), Optional.empty(), UNKNOWN, UNKNOWN, UNKNOWN));
        draft.limits = new UnitLimits(UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, of(5), UNKNOWN, UNKNOWN, UNKNOWN);
        refusedOnlyAt(draft, "[limits]", "imbalance_V", "10 V", "5 V");
    }

    private static UnitLimits limits(OptionalDouble high, OptionalDouble low, OptionalDouble touch) {
        return new UnitLimits(UNKNOWN, UNKNOWN, UNKNOWN, high, low, UNKNOWN, UNKNOWN, UNKNOWN, touch);
    }
}
