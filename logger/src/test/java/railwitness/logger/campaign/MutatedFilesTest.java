package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;

/** The short form of the campaign. */
class MutatedFilesTest {
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
        assertThat(files.taken()).isBetween(2, 285);
    }
}
