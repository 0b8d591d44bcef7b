package railwitness.analysis.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.analysis.reference.SimulatedSupply;

/** A sheet predicts what its parts tell, and nothing from parts that it does not give. */
class SparseSheetTest {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();
    private static final Map<String, Double> LOADED = Map.of("plus", 2.0, "minus", 2.0);

    private static Design bare(FilterInput filter) {
        return Design.of(
                new Unit("supply", Optional.empty(), Optional.empty(), Optional.empty()),
                Converter.unregulated(filter),
                Input.of(13.8),
                Transformer.of(4, 12),
                List.of(new Rail("plus", 36.7, UNKNOWN), new Rail("minus", -36.7, UNKNOWN)));
    }

    private static Prediction predicted(Design design, Map<String, Double> loads) {
        return Prediction.of(design, 13.8, loads).orElseThrow();
    }

    @Test
    void turnsAloneTellTheUnloadedRail() {
        Prediction idle = predicted(bare(FilterInput.CAPACITOR), Map.of());
        assertThat(idle.rail("plus").orElseThrow()).isCloseTo(41.4, within(1e-6));
        assertThat(idle.rail("minus").orElseThrow()).isCloseTo(-41.4, within(1e-6));
        // the circuit simulator's unit of these turns, without load
        assertThat(idle.rail("plus").orElseThrow())
                .isCloseTo(SimulatedSupply.number(SimulatedSupply.row("load_000"), "vpos_avg_V"), within(0.05 * 41.4));
    }

    @Test
    void turnsAloneTellNeitherIdleCurrentNorSagNorEfficiency() {
        Prediction idle = predicted(bare(FilterInput.CAPACITOR), Map.of());
        assertThat(idle.inputCurrent()).isEmpty();
        assertThat(idle.loss()).isEmpty();
        Prediction loaded = predicted(bare(FilterInput.CAPACITOR), LOADED);
        assertThat(loaded.railVolts()).isEmpty();
        assertThat(loaded.efficiency()).isEmpty();
        assertThat(loaded.rippleRmsVolts()).isEmpty();
        assertThat(loaded.fluxTesla()).isEmpty();
        assertThat(loaded.lossWatts()).isEmpty();
        assertThat(loaded.leftOut()).contains("on_resistance_ohm", "drop_V", "leakage_nH", "duty");
    }

    /** Idle current is missing from it, and of the loaded current leakage gives back a percent or two. */
    @Test
    void whatTheTurnsAloneDrawIsAboutTheLeastThatTheSimulatedUnitDraws() {
        for (String row : List.of("load_000", "load_025", "load_050", "load_100")) {
            var found = SimulatedSupply.row(row);
            Map<String, Double> loads = Map.of(
                    "plus", SimulatedSupply.number(found, "ipos_A"), "minus", SimulatedSupply.number(found, "ineg_A"));
            double least = Prediction.of(bare(FilterInput.CAPACITOR), SimulatedSupply.number(found, "vin_avg_V"), loads)
                    .orElseThrow()
                    .inputAmperes();
            double simulated = SimulatedSupply.number(found, "iin_avg_A");
            assertThat(least).as(row).isBetween(0.96 * simulated - 0.5, 1.01 * simulated);
        }
    }

    /** Between mean and peak, whichever a bleeder and the choke make of it. */
    @Test
    void behindAChokeTurnsAloneTellNoRail() {
        assertThat(predicted(bare(FilterInput.CHOKE), Map.of()).railVolts()).isEmpty();
        assertThat(predicted(bare(FilterInput.CHOKE), LOADED).railVolts()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"switches", "rectifier", "filter"})
    void eachPartThatIsMissingTakesTheLoadedRailWithIt(String part) {
        Design whole = SimulatedSupply.design();
        assertThat(predicted(whole, LOADED).efficiency()).isPresent();
        Prediction lacking = predicted(without(whole, part), LOADED);
        assertThat(lacking.railVolts()).isEmpty();
        assertThat(lacking.efficiency()).isEmpty();
        assertThat(predicted(without(whole, part), Map.of()).railVolts()).hasSize(2);
    }

    private static Design without(Design d, String part) {
        return new Design(
                d.unit(),
                d.converter(),
                d.input(),
                d.transformer(),
                part.equals("switches") ? Optional.empty() : d.switches(),
                part.equals("rectifier") ? Optional.empty() : d.rectifier(),
                part.equals("filter") ? Optional.empty() : d.filter(),
                d.rails(),
                d.connected(),
                d.limits(),
                d.coldResistance(),
                d.decision(),
                d.requirements());
    }

    @Test
    void aHeldRailIsKnownAsFarAsTheTurnsCanGiveIt() {
        Rail held = new Rail("aux", 12, UNKNOWN, OptionalInt.empty(), Optional.of(true), UNKNOWN, UNKNOWN, UNKNOWN);
        Design design = withRails(List.of(new Rail("plus", 36.7, UNKNOWN), held));
        Prediction loaded = predicted(design, Map.of("plus", 1.0, "aux", 1.0));
        assertThat(loaded.rail("aux")).hasValue(12);
        assertThat(loaded.rail("plus")).isEmpty();
        assertThat(loaded.lossWatts().get("series regulators")).isCloseTo(41.4 - 12, within(1e-6));
    }

    @Test
    void eachRailStandsAtItsOwnTurns() {
        Design design = withRails(List.of(new Rail("plus", 36.7, UNKNOWN), own("aux", 14, 5)));
        Prediction idle = predicted(design, Map.of());
        assertThat(idle.rail("plus").orElseThrow()).isCloseTo(13.8 * 3, within(1e-9));
        assertThat(idle.rail("aux").orElseThrow()).isCloseTo(13.8 * 5 / 4, within(1e-9));
    }

    /** Ampere turns balance: with ideal parts each rail asks of the input its load times its own ratio. */
    @Test
    void inputCurrentGoesWithEachRailsOwnTurns() {
        Design design = withRails(List.of(new Rail("plus", 36.7, UNKNOWN), own("aux", 14, 5)));
        assertThat(predicted(design, Map.of("plus", 2.0, "aux", 4.0)).inputAmperes())
                .isCloseTo(2 * 3 + 4 * 1.25, within(1e-6));
    }

    private static Rail own(String name, double nominal, int turns) {
        return new Rail(name, nominal, UNKNOWN, OptionalInt.of(turns), Optional.empty(), UNKNOWN, UNKNOWN, UNKNOWN);
    }

    private static Design withRails(List<Rail> rails) {
        Design bare = bare(FilterInput.CAPACITOR);
        return Design.of(bare.unit(), bare.converter(), bare.input(), Transformer.of(4, 12), rails);
    }
}
