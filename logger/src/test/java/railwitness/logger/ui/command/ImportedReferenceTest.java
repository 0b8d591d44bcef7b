package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source: circuit simulation (ngspice) of a reference converter; its own derived figures are held to 0.1 %. */
class ImportedReferenceTest {
    private static final double TENTH_OF_PERCENT = 0.1;

    @TempDir
    static Path folder;

    private static ReferenceConverter reference;
    private static Found found;

    @BeforeAll
    static void importTheTable() throws IOException {
        reference = ReferenceConverter.table();
        Path session = folder.resolve("reference.session");
        Said said = Said.by(
                "import",
                reference.asTable(folder.resolve("reference.csv")).toString(),
                "--design",
                "../sessions-sample/demo/design.toml",
                "--out",
                session.toString());
        assertThat(said.err()).isEmpty();
        found = Found.in(session);
    }

    @ParameterizedTest
    @CsvSource({
        "10 %, load_010",
        "25 %, load_025",
        "50 %, load_050",
        "75 %, load_075",
        "100 %, load_100",
    })
    void powersAndEfficienciesAreTheSimulatorsOwn(String step, String row) {
        var point = found.point("load-sweep", step);

        assertThat(point.at("/input/power/value").asDouble())
                .isCloseTo(reference.of(row, "pin_W"), withPercentage(TENTH_OF_PERCENT));
        assertThat(point.at("/output_power/value").asDouble())
                .isCloseTo(reference.of(row, "pout_W"), withPercentage(TENTH_OF_PERCENT));
        assertThat(point.at("/efficiency/value").asDouble())
                .isCloseTo(reference.of(row, "efficiency"), withPercentage(TENTH_OF_PERCENT));
        assertThat(point.at("/rails/minus/voltage/value").asDouble())
                .isCloseTo(reference.of(row, "vneg_avg_V"), withPercentage(TENTH_OF_PERCENT));
        assertThat(point.at("/rails/minus/current/value").asDouble()).isPositive();
    }

    @ParameterizedTest
    @CsvSource({
        "step-up slope, plus, 3.00276",
        "step-up slope, minus, 3.00276",
        "effective turns ratio, plus, 3.00276",
        "load effect as wired, plus, 4.80563",
        "output resistance as wired, plus, 0.974218",
        "output resistance as wired, minus, 0.974218",
        "cross effect as wired, plus, -1.29017",
        "cross effect as wired, minus, -1.29017",
        "no-load input power, , 4.8400",
    })
    void figuresAreTheSimulatorsOwn(String figure, String rail, double value) {
        assertThat(found.figure(figure, rail)).isCloseTo(value, withPercentage(TENTH_OF_PERCENT));
    }

    @Test
    void heldLoadEffectLeavesTheSourcesSagOut() {
        double moved = 3.00276 * (reference.of("load_000", "vin_avg_V") - reference.of("load_100", "vin_avg_V"));
        double asWired = reference.of("load_000", "vpos_avg_V") - reference.of("load_100", "vpos_avg_V");

        assertThat(found.figure("load effect", "plus")).isCloseTo(asWired - moved, withPercentage(TENTH_OF_PERCENT));
    }

    @Test
    void averageEfficiencyIsTheMeanOfFour() {
        double mean = (reference.of("load_025", "efficiency")
                        + reference.of("load_050", "efficiency")
                        + reference.of("load_075", "efficiency")
                        + reference.of("load_100", "efficiency"))
                / 4;

        assertThat(found.figure("average efficiency", null)).isCloseTo(mean, withPercentage(TENTH_OF_PERCENT));
    }

    @Test
    void withoutABenchSheetNothingIsSaidOfTheUncertainty() {
        assertThat(found.point("load-sweep", "50 %").at("/input/voltage/u").isNull())
                .isTrue();
        assertThat(Said.by("findings", folder.resolve("reference.session").toString())
                        .out())
                .contains("accuracy unknown");
    }

    @Test
    void aHealthyUnitHasNoCause() {
        assertThat(found.causes()).isEmpty();
    }
}
