package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Design;
import railwitness.logger.fixture.CabinSheet;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.sheet.Sheets;

/** Bounds of a run are of each rail, and come of what the sheets give. */
class RunLimitsTest {
    private static final String LEAST = CabinSheet.with("""
            [[rail]]
            name = "aux"
            nominal_V = 12
            regulated = true
            """);
    private static final String UP = "[[stage]]\nkind = \"power-up\"\ncurrent_limit_A = 3\n";
    private static final String IDLE = "[[stage]]\nkind = \"no-load\"\n";

    private static RunLimits limits(String design, String plan) {
        Design unit = Sheets.design("design.toml", design).content();
        Plan steps = Sheets.plan("plan.toml", plan).content();
        return RunLimits.of(unit, steps, OptionalDouble.of(40));
    }

    @Test
    void eachRailHasItsOwnBound() {
        RunLimits limits = limits(LEAST, IDLE);
        assertThat(limits.railHighVolts("plus")).isCloseTo(1.15 * 24, within(1e-9));
        assertThat(limits.railHighVolts("aux")).isCloseTo(1.15 * 12, within(1e-9));
    }

    @Test
    void theHighestInputOfThePlanCounts() {
        String sweep = "[[stage]]\nkind = \"line-sweep\"\ninputs_V = [12, 15]\nload_pct = 0\n";
        assertThat(limits(LEAST, sweep).railHighVolts("plus")).isCloseTo(1.15 * 30, within(1e-9));
    }

    @Test
    void withoutAnyLoadOnTheSheetNoLoadIsInventedForTheInputCurrent() {
        assertThat(limits(LEAST, UP + IDLE).workingAmps()).isEqualTo(3);
        String fused = LEAST.replace("nominal_V = 12\n[tr", "nominal_V = 12\nfuse_A = 15\n[tr");
        assertThat(limits(fused, UP + IDLE).workingAmps()).isEqualTo(15);
        assertThat(limits(LEAST, IDLE).workingAmps()).isEqualTo(40); // what the supply gives
    }

    @Test
    void fullLoadTimesTurnsBoundsTheInputCurrentWhereLossesAreNotKnown() {
        String loaded = LEAST.replace("nominal_V = 22\n", "nominal_V = 22\nfull_load_A = 5\n");
        assertThat(limits(loaded, UP + IDLE).workingAmps()).isCloseTo(1.25 * 10, within(0.01));
    }
}
