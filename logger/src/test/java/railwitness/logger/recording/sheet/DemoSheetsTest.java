package railwitness.logger.recording.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Design;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.plan.Rating;

class DemoSheetsTest {
    private static final Path DEMO = Path.of("../sessions-sample/demo");

    @Test
    void demoDesignSaysWhatTheUnitShouldBe() {
        Design design = Sheet.of(DEMO.resolve("design.toml")).read(DesignReader::design);

        assertThat(design.transformer().orElseThrow().ratio()).isEqualTo(3.0);
        assertThat(design.rails()).extracting("name").containsExactly("plus", "minus");
        assertThat(design.limits().touchVolts()).hasValue(5);
        assertThat(design.requirements()).isNotEmpty();
    }

    @Test
    void demoPlanRepeatsTheQuarterLoadAtTheEndOfTheSweep() {
        Plan plan = Sheet.of(DEMO.resolve("plan.toml")).read(PlanReader::plan);

        assertThat(plan.steps(new Rating(13.8, java.util.Map.of("plus", 4.0))))
                .extracting("name")
                .containsSubsequence("25 %", "100 %", "25 % again");
    }

    @Test
    void allFaultsOfASheetAreSaidAtOnceWithTheirLines() {
        Sheet sheet = Sheet.of("plan.toml", """
                [plan]
                average_s = -1
                [[stage]]
                kind = "lode-sweep"
                [[stage]]
                kind = "cross-load"
                low_pct = 60
                high_pct = 40
                """);

        assertThatThrownBy(() -> sheet.read(PlanReader::plan))
                .isInstanceOf(SheetException.class)
                .hasMessageContaining("plan.toml:2:")
                .hasMessageContaining("plan.toml:4:")
                .hasMessageContaining("lode-sweep")
                .hasMessageContaining("plan.toml:8:");
    }
}
