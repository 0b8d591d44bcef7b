package railwitness.logger.recording.importing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.store.SessionHead;

class TableSessionTest {
    @TempDir
    Path folder;

    private Path table(int rows) throws IOException {
        return Files.writeString(
                folder.resolve("t.csv"),
                IntStream.range(0, rows)
                        .mapToObj(i -> i + ",no-load,0 %,13.8,0." + i % 10)
                        .collect(
                                Collectors.joining("\n", "time_s,stage,step,input.voltage_V,input.current_A\n", "\n")));
    }

    private SessionHead head(TableStart start) {
        return new SessionHead("i", Instant.EPOCH, ZoneOffset.UTC, false, "test", "", "u", "", "");
    }

    @Test
    void whatIsStoppedLeavesNothing() throws IOException {
        Path table = table(9000);
        TableSession taken = new TableSession(table, TableForm.USUAL, Optional.empty(), Optional.empty());
        double[] seen = new double[1];
        assertThatThrownBy(() -> taken.write(folder.resolve("s.session"), this::head, share -> {
                    seen[0] = share;
                    if (share > 0.4) {
                        throw new IllegalStateException("enough");
                    }
                }))
                .hasMessage("enough");
        assertThat(seen[0]).isBetween(0.4, 0.8);
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).containsExactly(table);
        }
    }

    @Test
    void previewShowsTheFirstRowsAndTakesNothing() throws IOException {
        TablePreview seen = TablePreview.of(table(50), TableForm.USUAL, 2);
        assertThat(seen.columns()).hasSize(5).startsWith("time_s", "stage");
        assertThat(seen.rows())
                .containsExactly(
                        List.of("0", "no-load", "0 %", "13.8", "0.0"), List.of("1", "no-load", "0 %", "13.8", "0.1"));
        assertThat(seen.fault()).isEmpty();
    }

    @Test
    void previewSaysWhatIsWrong() throws IOException {
        assertThat(TablePreview.of(table(5), new TableForm(';', true, false, false), 2)
                        .fault())
                .contains("where commas stand between the cells");
        Path german =
                Files.writeString(folder.resolve("g.csv"), "time_s;stage;step;input.voltage_V\n1;no-load;0 %;13,8\n");
        assertThat(TablePreview.of(german, new TableForm(';', false, false, false), 2)
                        .fault())
                .contains("row 2", "13,8", "choose the decimal comma");
        assertThat(TablePreview.of(german, new TableForm(';', true, false, false), 2)
                        .fault())
                .isEmpty();
        assertThat(TablePreview.of(folder.resolve("none.csv"), TableForm.USUAL, 2)
                        .fault())
                .contains("cannot be read");
    }
}
