package railwitness.logger.recording.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class SheetsDocumentTest {
    private static final Path DOCUMENT = Path.of("docs/sheets.md");

    /** To write the document anew after adding a key: {@code mvn test -pl logger -am -Dtest=SheetsDocumentTest -Dwrite.docs}. */
    @Test
    void documentListsEveryKeyWithUnitRangeAndMeaning() throws IOException {
        String wanted = SheetsDocument.document();
        if (System.getProperty("write.docs") != null) {
            Files.writeString(DOCUMENT, wanted);
        }
        assertThat(Files.readString(DOCUMENT)).isEqualToNormalizingNewlines(wanted);
    }
}
