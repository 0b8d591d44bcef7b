package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.analysis.verdict.Fitness;

/** The short form of the campaign. */
@Timeout(value = 120, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class MutatedFilesTest {
    @TempDir
    Path folder;

    @Test
    void mutatedSheetsAreTakenOrRefusedInWords() {
        MutatedFiles files = new MutatedFiles();
        files.sheets(600, 1);
        assertThat(files.faults()).isEmpty();
        assertThat(files.taken()).isBetween(30, 570);
    }

    @Test
    void mutatedTablesAreTakenOrRefusedInWords() throws IOException {
        MutatedFiles files = new MutatedFiles();
        files.tables(300, 1);
        assertThat(files.faults()).isEmpty();
        assertThat(files.taken()).isBetween(60, 300);
    }

    @Test
    void theTableItselfIsFitAndNoneWithAnImpossibleValueIs() throws IOException {
        Path table = Files.writeString(folder.resolve("plausible.csv"), PlausibleTable.text());
        assertThat(PlausibleTable.findings(table).orElseThrow().findings().verdict())
                .isEqualTo(Fitness.FIT);
        MutatedFiles files = new MutatedFiles();
        files.implausible(20, 1);
        assertThat(files.faults()).isEmpty();
        assertThat(files.taken()).isGreaterThan(8);
    }
}
