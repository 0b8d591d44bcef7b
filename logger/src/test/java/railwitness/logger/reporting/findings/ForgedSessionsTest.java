package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of {@link ForgeryStudy}; its long form stands in {@code analysis/README.md}. */
class ForgedSessionsTest {
    private static final long SEED = 20_261;

    @TempDir
    Path folder;

    /** A sound unit and a faulty one on benches of their own; the sound one also with everything wrong, one by one. */
    @Test
    void soundBenchesAreBelievedAndEveryForgeryIsNamed() throws IOException {
        ForgeryStudy study = new ForgeryStudy(folder, SEED);
        study.bench(0);
        study.bench(1);
        study.resistors(0);

        assertThat(study.accused).as("seed %d", SEED).isEmpty();
        assertThat(study.missed).as("seed %d", SEED).isEmpty();
        assertThat(study.found).hasSizeGreaterThan(32);
    }
}
