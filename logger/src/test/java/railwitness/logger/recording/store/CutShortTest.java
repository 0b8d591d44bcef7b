package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Short forms of the campaigns {@link KillTable} and {@link PowerCutTable}. */
class CutShortTest {
    @TempDir
    Path folder;

    @Test
    void aKilledRecorderLosesNothingItHadSaidToBeSafe() throws Exception {
        for (int i = 0; i < 3; i++) {
            KillTable.Left left = KillTable.kill(folder.resolve(i + ".session"), 100 + i, 40 * i);
            assertThat(left.isGood()).as(left.toString()).isTrue();
        }
    }

    @Test
    void aPowerCutLosesNothingThatWasSaidToBeSafe() throws Exception {
        assumeThat(PowerCutTable.isPossible()).as("needs a C compiler on Linux").isTrue();
        Path here = Path.of("src/test/native/writelog.c");
        Path source = Files.exists(here) ? here : Path.of("logger").resolve(here);
        for (KillTable.Left left : PowerCutTable.cut(folder, 5, 12, 4, source)) {
            assertThat(left.isGood()).as(left.toString()).isTrue();
            assertThat(left.said()).isPositive();
        }
    }
}
