package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The short forms of the two studies; their long forms and tables are in {@code analysis/README.md}. */
class StudiesTest {
    private static final long SEED = 25_000;

    @TempDir
    Path folder;

    /** 10 000 sessions give 94 to 98 %; 150 scatter by 1.8 % (one standard deviation). */
    @Test
    void statedIntervalsHoldTheTruth() {
        assertThat(new CoverageStudy().run(150, SEED))
                .as("seed %d", SEED)
                .hasSizeGreaterThan(25)
                .allSatisfy((figure, share) -> assertThat(share).as(figure).isBetween(89.0, 100.0));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "none",
                "weak-half",
                "shorted-rectifier",
                "shorted-switch",
                "tired-capacitor@minus=3",
                "lead-resistance",
                "leaky-clamp",
                "short-under-load=10"
            })
    void theFaultIsNamedFirstOrAmongThoseNotToldApart(String fault) throws IOException {
        assertThat(new ConfusionStudy(folder, SEED).row(fault, 1).among())
                .as("seed %d", SEED)
                .isEqualTo(1);
    }
}
