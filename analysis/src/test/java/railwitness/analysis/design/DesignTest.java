package railwitness.analysis.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class DesignTest {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();

    @Test
    void moreSecondaryTurnsStepUpAndFewerStepDown() {
        // common practice, no source: 12 V to 8 V with fewer secondary turns, 12 V to 20 V and more with more
        assertThat(12 * Transformer.of(6, 4).ratio()).isEqualTo(8);
        assertThat(12 * Transformer.of(3, 5).ratio()).isEqualTo(20);
    }

    @Test
    void dutyBeyondHalfACycleIsRefusedWithWhatIsAllowed() {
        assertThatThrownBy(() ->
                        new Converter(FilterInput.CAPACITOR, false, UNKNOWN, OptionalDouble.of(0.6), UNKNOWN, UNKNOWN))
                .hasMessage("duty 0.6 must be above 0, at most 0.5");
    }

    @Test
    void primaryWithoutTurnsIsRefused() {
        assertThatThrownBy(() -> Transformer.of(0, 12))
                .hasMessage("primary_turns 0 must be a whole number, at least 1");
    }

    @Test
    void lowestInputAboveNominalIsRefused() {
        assertThatThrownBy(() ->
                        new Input(12, OptionalDouble.of(13), UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN))
                .hasMessage("lowest_V 13 must be above 0, at most 12");
    }

    @Test
    void unknownWordIsRefusedWithThoseAllowed() {
        assertThatThrownBy(() -> FilterInput.of("coil")).hasMessage("filter 'coil' must be one of: capacitor, choke");
    }

    @Test
    void requirementOnARailThatIsNotThereIsRefused() {
        SheetRequirement requirement = new SheetRequirement(
                FigureName.RIPPLE, Optional.of("third"), UNKNOWN, OptionalDouble.of(0.06), Optional.empty());
        assertThatThrownBy(() -> withRequirement(requirement))
                .hasMessage("requirement's rail 'third' must be one of: plus, minus");
    }

    @Test
    void requirementWithoutALimitIsRefused() {
        assertThatThrownBy(() ->
                        new SheetRequirement(FigureName.RIPPLE, Optional.empty(), UNKNOWN, UNKNOWN, Optional.empty()))
                .hasMessage("requirement on 'ripple' must state at_least, at_most or both");
    }

    @Test
    void railNamedTwiceIsRefused() {
        Rail rail = new Rail("plus", 36.7, UNKNOWN);
        assertThatThrownBy(() -> sheet(List.of(rail, rail))).hasMessage("rail name 'plus' must not appear twice");
    }

    private static Design sheet(List<Rail> rails) {
        return Design.of(
                new Unit("supply", Optional.empty(), Optional.empty(), Optional.empty()),
                Converter.unregulated(FilterInput.CAPACITOR),
                Input.of(13.8),
                Transformer.of(4, 12),
                rails);
    }

    private static Design withRequirement(SheetRequirement requirement) {
        Design plain = sheet(List.of(new Rail("plus", 36.7, UNKNOWN), new Rail("minus", -36.7, UNKNOWN)));
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
                plain.limits(),
                plain.coldResistance(),
                plain.decision(),
                List.of(requirement));
    }
}
